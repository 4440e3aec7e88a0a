#!/usr/bin/env bash
# Runs a command where /sys/class/gpio is the emulated one. To be started by `unshare`, which gives it a mount
# and a process namespace of its own: when this script ends, mounts and daemon go with it.
# usage: unshare -m -p -f --kill-child --mount-proc namespace.sh GPIOFS COMMAND...
set -euo pipefail
gpiofs=$1
shift

if [ ! -d /sys/class/gpio ]; then
  # Nothing can be made in sysfs: a tmpfs takes the place of /sys/class, with the other classes bound into it.
  kept=$(mktemp -d)
  mount --bind /sys/class "$kept"
  mount -t tmpfs -o mode=755 classes /sys/class
  for class in "$kept"/*; do
    mkdir "/sys/class/${class##*/}"
    mount --bind "$class" "/sys/class/${class##*/}"
  done
  umount "$kept"
  rmdir "$kept"
  mkdir /sys/class/gpio
fi

# On one processor: each call waits for the daemon's answer, and to wake another processor takes five times as long.
taskset -cp "$(taskset -cp $$ | sed 's/.*: *//; s/[-,].*//')" $$ >/dev/null

"$gpiofs" -f -s -o allow_other,default_permissions /sys/class/gpio &
for _ in $(seq 100); do
  [ -e /sys/class/gpio/.control ] && break
  sleep 0.05
done
[ -e /sys/class/gpio/.control ] || { echo "the emulated GPIO did not come up" >&2; exit 3; }
exec "$@"
