package process

import (
	"errors"
	"strconv"

	"golang.org/x/sys/windows"
	"golang.org/x/sys/windows/registry"
)

func machine() string {
	key, err := registry.OpenKey(registry.LOCAL_MACHINE, `SOFTWARE\Microsoft\Cryptography`, registry.QUERY_VALUE|registry.WOW64_64KEY)
	if err != nil {
		return ""
	}
	defer key.Close()
	mark, _, _ := key.GetStringValue("MachineGuid")
	return mark
}

// boot is not asked: the time at which a process began is a date here, which no later run of the computer repeats.
func boot() string { return "" }

func space() string { return "" }

func look(pid int) (began string, running bool) {
	handle, err := windows.OpenProcess(windows.PROCESS_QUERY_LIMITED_INFORMATION|windows.SYNCHRONIZE, false, uint32(pid))
	if err != nil {
		return "", !errors.Is(err, windows.ERROR_INVALID_PARAMETER) // which is what there is for no such process
	}
	defer windows.CloseHandle(handle)
	var start, exit, kernel, user windows.Filetime
	if windows.GetProcessTimes(handle, &start, &exit, &kernel, &user) == nil {
		began = strconv.FormatInt(start.Nanoseconds(), 10)
	}
	event, err := windows.WaitForSingleObject(handle, 0) // an ended process is there while somebody holds a handle of it
	return began, err != nil || event != windows.WAIT_OBJECT_0
}
