#!/usr/bin/env bash
# Gives a fresh Debian root with systemd at the folder named, from a copy kept under /tmp that the first caller makes.
# usage: base-system.sh CODENAME TARGET
set -euo pipefail
kept=/tmp/spurwise-checks/$1
mkdir -p /tmp/spurwise-checks
# Test files run side by side: the first makes the copy, the others wait for it.
exec 9>"$kept.lock"
flock 9
if [ ! -e "$kept/complete" ]; then
  rm -rf "$kept"
  mkdir -p "$kept"
  debootstrap --variant=minbase --include=systemd "$1" "$kept/root" >"$kept/debootstrap.log" 2>&1 || {
    tail -5 "$kept/debootstrap.log" >&2
    exit 1
  }
  touch "$kept/complete"
fi
flock -u 9
cp -a "$kept/root" "$2"
