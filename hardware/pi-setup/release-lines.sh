#!/bin/sh
# Releases every line of the board after the bench has stopped, however it stopped. What to do to which pin comes
# from SPURWISE_RELEASE: BCM numbers with `high` (output enable of a chain) or `in` (a line of a direct board).
# usage: SPURWISE_RELEASE="24:high" release-lines.sh
set -u
root=/sys/class/gpio
[ -n "${SPURWISE_RELEASE:-}" ] || exit 0

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
