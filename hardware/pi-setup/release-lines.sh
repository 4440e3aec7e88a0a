#!/bin/sh
# Releases every line of the board after the bench has stopped, however it stopped. What to do to which pin comes
# from SPURWISE_RELEASE: BCM numbers with `high` (output enable of a chain) or `in` (a line of a direct board).
# Where the kernel shows no pins in sysfs it goes through the character device, by the programs of Debian's gpiod.
# usage: SPURWISE_RELEASE="24:high" release-lines.sh [FOLDER OF THE SYSFS PINS]
set -u
root=${1:-/sys/class/gpio}
[ -n "${SPURWISE_RELEASE:-}" ] || exit 0

# The header's chip by its label; of two chips with the label it is the larger. Prints its name for gpioset.
header_device() {
  gpiodetect | sed -nE 's/^([^ ]+) \[pinctrl-(bcm2835|bcm2711|rp1)\] \(([0-9]+) lines\)$/\3 \1/p' |
    sort -rn | sed -n '1s/^[0-9]* //p'
}

by_character_device() {
  if ! command -v gpiodetect >/dev/null || ! command -v gpioset >/dev/null; then
    echo "release-lines: no pins under $root, and no gpioset: apt-get install gpiod" >&2
    return 1
  fi
  chip=$(header_device)
  if [ -z "$chip" ]; then
    echo "release-lines: gpiodetect names no chip of a Raspberry Pi header" >&2
    return 1
  fi
  done_status=0
  for release in $SPURWISE_RELEASE; do
    pin=${release%%:*}
    case ${release#*:} in
      high) gpioset "$chip" "$pin=1" || done_status=1 ;;
      # To read a pin makes it an input.
      *) gpioget "$chip" "$pin" >/dev/null || done_status=1 ;;
    esac
  done
  return $done_status
}

if [ ! -e "$root/export" ]; then
  by_character_device
  exit $?
fi

base=
for chip in "$root"/gpiochip*; do
  [ -r "$chip/label" ] || continue
  case $(cat "$chip/label") in
    pinctrl-bcm2835 | pinctrl-bcm2711 | pinctrl-rp1)
      pins=$(cat "$chip/ngpio")
      # Of two chips with the label, the header's is the larger.
      if [ -z "$base" ] || [ "$pins" -gt "$most" ]; then
        base=$(cat "$chip/base")
        most=$pins
      fi
      ;;
  esac
done
if [ -z "$base" ]; then
  echo "release-lines: no chip of a Raspberry Pi header under $root" >&2
  exit 1
fi

# The pin may be root's for a moment after its export, until udev has been round.
turn() {
  for _ in 1 2 3 4 5 6 7 8 9 10; do
    if (echo "$2" >"$1/direction") 2>/dev/null; then return 0; fi
    sleep 0.1
  done
  echo "release-lines: $1 cannot be turned to $2" >&2
  return 1
}

status=0
for release in $SPURWISE_RELEASE; do
  number=$((base + ${release%%:*}))
  [ -d "$root/gpio$number" ] || echo "$number" >"$root/export"
  turn "$root/gpio$number" "${release#*:}" || status=1
done
exit $status
