package main

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"runtime"
)

// orUsual gives the data file, the usual one where nobody says otherwise.
func orUsual(path string) (string, error) {
	if path != "" {
		return path, nil
	}
	return dataFile()
}

// dataFile is where the jobs are kept when nobody says otherwise: in the system's folder for data,
// or where earlier versions kept them if they are there and nowhere else.
func dataFile() (string, error) {
	folder, err := dataHome()
	if err != nil {
		return "", fmt.Errorf("say where to keep the jobs with --data: %w", err)
	}
	path := filepath.Join(folder, "coursewright", "jobs.db")
	if former, err := os.UserConfigDir(); err == nil {
		former = filepath.Join(former, "coursewright", "jobs.db")
		if !stands(path) && stands(former) {
			return former, nil
		}
	}
	return path, nil
}

// dataHome is the system's folder for the data of programs. XDG Base Directory Specification 0.8,
// section 3: an XDG_DATA_HOME that is not absolute counts as none.
func dataHome() (string, error) {
	if runtime.GOOS == "darwin" { // the system has one folder for both
		return os.UserConfigDir()
	}
	if folder := os.Getenv("XDG_DATA_HOME"); filepath.IsAbs(folder) {
		return folder, nil
	}
	home, err := os.UserHomeDir()
	if err == nil && !filepath.IsAbs(home) {
		err = errors.New("the home folder is not known")
	}
	return filepath.Join(home, ".local", "share"), err
}

func stands(path string) bool {
	_, err := os.Stat(path)
	return err == nil
}
