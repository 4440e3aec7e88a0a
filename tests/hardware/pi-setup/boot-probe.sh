#!/bin/sh
# Runs as root inside the booted system: works on the service and writes down what the pins look like after each
# step, as one JSON object a line, then ends the system.
pins=/sys/class/gpio/.control
wait_ready() { node /opt/spurwise/hardware/pi-setup/wait-until-ready.mjs 20 && sleep 0.5; }
ask() { node -e 'fetch("http://127.0.0.1:4710" + process.argv[1]).then((r) => r.text()).then(console.log)' "$1"; }
restarts() { systemctl show -p NRestarts --value spurwise; }
tell() { printf '{"step":"%s","restarts":%s,"facts":%s,"pins":%s}\n' "$1" "$(restarts)" "$2" "$(cat $pins)"; }

wait_ready
tell running "$(ask /)"
systemctl kill -s KILL spurwise
sleep 1
tell killed null
wait_ready
tell "running again" "$(ask /)"
ask /hang >/dev/null
for _ in $(seq 100); do
  [ "$(restarts)" -ge 2 ] && break
  sleep 0.25
done
wait_ready
tell "running after a hang" "$(ask /)"
systemctl stop spurwise
tell stopped null
journalctl --no-pager -o cat -u spurwise -u emulated-gpio >/var/log/service.txt
systemctl poweroff --no-block
