#!/usr/bin/env bash
# Sets a Raspberry Pi (Raspberry Pi OS Lite, 64-bit) up as a Spurwise bench, or undoes it. Safe to run twice: the
# second run changes no file. See guide.md beside this file, and its list of what no Pi has seen yet.
set -euo pipefail
export LC_ALL=C
umask 022

usage() {
  cat <<'TEXT'
usage: sudo ./setup.sh [options]        set up, or bring an earlier set-up to these options
       sudo ./setup.sh --undo [--delete-data] [--root DIR]
       ./setup.sh --check [options]     say what is missing, change nothing

  --board NAME         board description in hardware/boards, without .json (default: workshop)
  --port N             port of the bench (default: 4710)
  --app DIR            built project to install from (default: the one this script is in)
  --update-key FILE    public key (PEM) of whoever publishes updates: only what they signed is taken
  --node-archive FILE  an official Node archive (linux-arm64, .tar.xz) where the system's Node is too old
  --no-kiosk           no screen session: the bench is used from another machine
  --read-only          keep the system read-only in use; the data stands on a partition of its own:
  --data-label LABEL   file system label of that partition (default: spurwise-data)
  --root DIR           work on a system image mounted there: nothing is started or downloaded
  --check              change nothing: say what is missing, and exit with 1 where something is
  --undo               take everything away again; the attempts in /var/lib/spurwise stay
  --delete-data        with --undo: the attempts go too
TEXT
}

here=$(cd "$(dirname "${BASH_SOURCE[0]}")" && pwd)
root='' app=$(cd "$here/../.." && pwd) board=workshop port=4710 node_archive='' update_key=''
data_label=spurwise-data is_kiosk=yes is_read_only=no is_undo=no is_delete_data=no is_check=no

fail() {
  echo "setup: $*" >&2
  exit 1
}
say() { echo "setup: $*"; }

while [ $# -gt 0 ]; do
  case $1 in
    --board | --port | --app | --update-key | --node-archive | --data-label | --root)
      [ $# -ge 2 ] || fail "$1 needs a value"
      case $1 in
        --board) board=$2 ;;
        --port) port=$2 ;;
        --app) app=$(cd "$2" && pwd) ;;
        --update-key) update_key=$(realpath -m "$2") ;;
        --node-archive) node_archive=$(realpath "$2") ;;
        --data-label) data_label=$2 ;;
        --root) root=$(cd "$2" && pwd) ;;
      esac
      shift
      ;;
    --no-kiosk) is_kiosk=no ;;
    --read-only) is_read_only=yes ;;
    --undo) is_undo=yes ;;
    --check) is_check=yes ;;
    --delete-data) is_delete_data=yes ;;
    -h | --help)
      usage
      exit 0
      ;;
    *)
      usage >&2
      fail "no such option: $1"
      ;;
  esac
  shift
done
case $port in *[!0-9]* | "") fail "--port takes a number, not '$port'" ;; esac
case $data_label in *[!A-Za-z0-9_-]* | "") fail "--data-label takes letters, digits, - and _" ;; esac
description=$app/hardware/boards/$board.json
[ -z "$update_key" ] || [ -f "$update_key" ] || fail "there is no key $update_key"
[ $is_undo = yes ] || [ -f "$description" ] || fail "there is no board description $description"
[ $is_check = yes ] || [ "$(id -u)" = 0 ] || fail "run it as root: sudo $0"

# What was found before the first run, and so stays at the undo, is what is not in here.
state=$root/etc/spurwise/added
units=$root/etc/systemd/system
if [ -d "$root/boot/firmware" ]; then boot=$root/boot/firmware; else boot=$root/boot; fi

is_live() { [ -z "$root" ]; }

# ---- files, blocks and words: each changes a file only when it has to ----

put() { # SOURCE TARGET MODE
  if cmp -s "$1" "$2" && [ "$(stat -c %a "$2")" = "$3" ]; then return; fi
  mkdir -p "$(dirname "$2")"
  install -m "$3" "$1" "$2.new"
  mv "$2.new" "$2"
  say "wrote ${2#"$root"}"
}

put_text() { # TARGET MODE < text
  local text
  text=$(mktemp)
  cat >"$text"
  put "$text" "$1" "$2"
  rm "$text"
}

# Replaces a file's content, read whole before a byte is written, and keeps its owner and mode.
replace() { # TARGET < text
  local text
  text=$(mktemp)
  cat >"$text"
  if ! cmp -s "$text" "$1"; then
    cat "$text" >"$1"
    say "changed ${1#"$root"}"
  fi
  rm "$text"
}

block_start='# spurwise begin'
block_end='# spurwise end'

without_block() { # FILE
  # A file that did not end in a newline is given back so.
  if grep -qxF "$block_start, last line above unended" "$1"; then
    sed "/^$block_start/,/^$block_end\$/d" "$1" | head -c -1
  else
    sed "/^$block_start/,/^$block_end\$/d" "$1"
  fi
}

set_block() { # FILE < lines
  local lines start=$block_start newline=
  lines=$(cat)
  if [ -n "$(without_block "$1" | tail -c 1)" ]; then
    start="$block_start, last line above unended"
    newline=$'\n'
  fi
  { without_block "$1"; printf '%s%s\n%s\n%s\n' "$newline" "$start" "$lines" "$block_end"; } | replace "$1"
}

drop_block() { # FILE
  [ -f "$1" ] || return 0
  without_block "$1" | replace "$1"
}

note() { # what was added
  mkdir -p "$(dirname "$state")"
  grep -qxF "$1" "$state" 2>/dev/null || echo "$1" >>"$state"
}
noted() { [ -f "$state" ] && sed -n "s/^$1 //p" "$state"; }
unnote() {
  grep -vxF "$1" "$state" >"$state.new" || true
  mv "$state.new" "$state"
}

add_boot_word() { # WORD of the one-line cmdline.txt
  local file=$boot/cmdline.txt
  [ -f "$file" ] || return 0
  if grep -qwF -- "$1" "$file"; then return; fi
  sed "1s|\$| $1|" "$file" | replace "$file"
  note "boot-word $1"
}

drop_boot_word() { # WORD
  local file=$boot/cmdline.txt
  sed "1s| $1\$||; 1s| $1 | |" "$file" | replace "$file"
  unnote "boot-word $1"
}

# ---- the steps ----

check_node() { # NODE: the versions that the project names as its engines
  "$1" -e 'const [major, minor] = process.versions.node.split(".").map(Number);
    process.exit((major === 20 && minor >= 19) || (major === 22 && minor >= 12) || major > 22 ? 0 : 1)' 2>/dev/null
}

install_packages() {
  local wanted=() package
  # The compiler is for the GPIO package's native part.
  for package in python3 make g++; do wanted+=("$package"); done
  # For kernels without sysfs pins: the character device's library is built against libgpiod 1, which Debian 12 has;
  # the stop hook goes by the programs of gpiod.
  if is_live && [ ! -e /sys/class/gpio/export ]; then wanted+=(libgpiod-dev gpiod); fi
  if [ -z "$node_archive" ]; then wanted+=(nodejs npm); fi
  if [ $is_kiosk = yes ]; then wanted+=(cage chromium); fi
  if [ $is_read_only = yes ]; then wanted+=(overlayroot); fi
  local missing=()
  for package in "${wanted[@]}"; do
    dpkg-query --admindir="$root/var/lib/dpkg" -W -f '${Status}' "$package" 2>/dev/null | grep -q 'ok installed' ||
      missing+=("$package")
  done
  if [ ${#missing[@]} = 0 ]; then return; fi
  if ! is_live; then
    say "the image lacks these packages, install them in it: ${missing[*]}"
    return
  fi
  apt-get update
  apt-get install -y --no-install-recommends "${missing[@]}"
  for package in "${missing[@]}"; do note "package $package"; done
}

install_node() {
  local node=/usr/bin/node
  if [ -n "$node_archive" ]; then
    node=/opt/spurwise-node/bin/node
    local mark
    mark=$(sha256sum "$node_archive" | cut -d ' ' -f 1)
    if [ "$(cat "$root/opt/spurwise-node/archive.sha256" 2>/dev/null)" != "$mark" ]; then
      rm -rf "$root/opt/spurwise-node"
      mkdir -p "$root/opt/spurwise-node"
      tar -xf "$node_archive" -C "$root/opt/spurwise-node" --strip-components 1 --no-same-owner
      echo "$mark" >"$root/opt/spurwise-node/archive.sha256"
      say "unpacked Node into /opt/spurwise-node"
    fi
  fi
  if is_live && ! check_node "$node"; then
    fail "the bench needs Node 20.19 or later of 20, or 22.12 or later; $node is $("$node" --version 2>/dev/null || echo missing). Use Raspberry Pi OS based on Debian 13, or give --node-archive."
  fi
  node_path=$node
}

# A copy of a folder, made afresh when anything in it differs.
copy_folder() { # SOURCE TARGET
  if diff -rq "$1" "$2" >/dev/null 2>&1; then return; fi
  mkdir -p "$(dirname "$2")"
  rm -rf "$2.new"
  cp -r "$1" "$2.new"
  rm -rf "$2"
  mv "$2.new" "$2"
  say "copied ${2#"$root"}"
}

install_app() {
  [ -f "$app/dist/server/launch.js" ] || fail "$app is not built: run \`npm start\` in it once, then run this again"
  local folder file
  for folder in dist hardware/boards hardware/pi-setup scenarios; do
    if [ -d "$app/$folder" ]; then copy_folder "$app/$folder" "$root/opt/spurwise/$folder"; fi
  done
  for file in package.json package-lock.json LICENSE; do
    if [ -f "$app/$file" ]; then put "$app/$file" "$root/opt/spurwise/$file" 644; fi
  done
  if ! is_live; then
    [ -d "$root/opt/spurwise/node_modules" ] ||
      say "on the Pi, run \`npm ci --omit=dev --include=optional\` in /opt/spurwise (or this script again)"
    return
  fi
  local mark
  mark=$(sha256sum "$app/package-lock.json" | cut -d ' ' -f 1)-$("$node_path" -p process.versions.modules)
  if [ "$(cat /opt/spurwise/node_modules/.spurwise-lock 2>/dev/null)" != "$mark" ]; then
    (cd /opt/spurwise && PATH="$(dirname "$node_path"):$PATH" npm ci --omit=dev --include=optional --no-audit --no-fund)
    [ -d /opt/spurwise/node_modules/onoff ] || [ -d /opt/spurwise/node_modules/node-libgpiod ] ||
      say "no GPIO package could be built: the bench will say that no real board can be read"
    echo "$mark" >/opt/spurwise/node_modules/.spurwise-lock
  fi
}

add_accounts() {
  local group
  for group in gpio video render input; do
    grep -q "^$group:" "$root/etc/group" || note "group $group"
  done
  put "$here/files/sysusers.conf" "$root/etc/sysusers.d/spurwise.conf" 644
  if grep -q '^spurwise:' "$root/etc/passwd" && grep -q '^spurwise-kiosk:' "$root/etc/passwd"; then return; fi
  systemd-sysusers ${root:+--root="$root"} "$root/etc/sysusers.d/spurwise.conf"
}

set_pins() { # what board-pins.mjs said
  local config=$boot/config.txt bcm
  [ -f "$config" ] || {
    say "no config.txt under ${boot#"$root"}: the pins have no pulls until the bench starts"
    return
  }
  { echo '[all]'; grep '^gpio=' <<<"$1"; } | set_block "$config"
  while read -r _ bcm; do
    case $bcm in
      7 | 8 | 9 | 10 | 11) warn_interface "$config" spi "$bcm" ;;
      2 | 3) warn_interface "$config" i2c_arm "$bcm" ;;
    esac
  done < <(grep '^bcm ' <<<"$1")
}

warn_interface() { # CONFIG PARAMETER BCM
  if grep -Eq "^dtparam=.*$2=on" "$1"; then
    say "caution: BCM $3 belongs to an interface that config.txt turns on (dtparam=$2=on); turn it off for the bench"
  fi
}

install_units() {
  sed "s|/usr/bin/node|$node_path|" "$here/files/spurwise.service" | put_text "$units/spurwise.service" 644
  put "$here/files/journald.conf" "$root/etc/systemd/journald.conf.d/spurwise.conf" 644
  enable spurwise.service
  if [ $is_kiosk = yes ]; then
    sed "s|/usr/bin/node|$node_path|" "$here/files/spurwise-kiosk.service" | put_text "$units/spurwise-kiosk.service" 644
    enable spurwise-kiosk.service
    add_boot_word consoleblank=0
  else
    remove_unit spurwise-kiosk.service
  fi
}

enable() { # UNIT, wanted by multi-user.target as its [Install] says
  local link=$units/multi-user.target.wants/$1
  if [ "$(readlink "$link" 2>/dev/null)" = "/etc/systemd/system/$1" ]; then return; fi
  [ -d "$units/multi-user.target.wants" ] || note "folder /etc/systemd/system/multi-user.target.wants"
  mkdir -p "$units/multi-user.target.wants"
  ln -sfn "/etc/systemd/system/$1" "$link"
  say "enabled $1"
}

remove_unit() { # UNIT
  [ -e "$units/$1" ] || return 0
  if is_live; then systemctl disable --now "$1" || true; fi
  rm -f "$units/$1" "$units/multi-user.target.wants/$1"
  say "removed $1"
}

make_read_only() {
  if [ $is_read_only = no ]; then return; fi
  if is_live && ! blkid -L "$data_label" >/dev/null; then
    fail "there is no partition labelled $data_label: make one first (guide.md, \"A read-only system\")"
  fi
  # Without the partition the bench must not start: attempts would go to memory and be lost.
  set_block "$root/etc/fstab" <<<"LABEL=$data_label /var/lib/spurwise ext4 noatime,nofail,x-systemd.device-timeout=20s 0 2"
  if [ ! -d "$root/var/lib/spurwise" ]; then
    note "folder /var/lib/spurwise"
    mkdir -p "$root/var/lib/spurwise"
  fi
  add_boot_word overlayroot=tmpfs:recurse=0
}

# Says what is missing for a bench on this board, changes nothing, and gives 1 where something is.
check() {
  local is_lacking=0 labels
  miss() {
    say "missing: $1"
    is_lacking=1
  }
  if [ ! -e "$root/sys/class/gpio/export" ]; then
    if compgen -G "$root/dev/gpiochip*" >/dev/null && [ -e "$root/usr/include/gpiod.h" ] &&
      ! grep -q gpiod_chip_request_lines "$root/usr/include/gpiod.h"; then
      say "this kernel shows no pins at /sys/class/gpio: the bench goes through its character device"
    else
      miss "this kernel shows no pins at /sys/class/gpio: use Raspberry Pi OS on Debian 12 (with libgpiod-dev), or a Pi 3 or 4"
    fi
  else
    labels=$(cat "$root"/sys/class/gpio/gpiochip*/label 2>/dev/null || true)
    grep -Eqx 'pinctrl-(bcm2835|bcm2711|rp1)' <<<"$labels" ||
      miss "no chip of a Raspberry Pi header among these: ${labels:-none}"
  fi
  grep -q '^gpio:' "$root/etc/group" || miss "the group gpio: without it the account spurwise may not use the pins"
  if is_live && ! command -v node >/dev/null; then
    miss "Node 20 or newer: \`sudo apt-get install nodejs\` on Debian 13, --node-archive on Debian 12"
  fi
  [ -d "$app/dist/server" ] || miss "a built project in $app: run \`npm start\` there once"
  if [ $is_kiosk = yes ] && [ -e "$units/display-manager.service" ]; then
    miss "a system without a desktop: use Raspberry Pi OS Lite, or --no-kiosk"
  fi
  if [ $is_read_only = yes ] && is_live && ! blkid -L "$data_label" >/dev/null; then
    miss "a partition labelled $data_label (guide.md, \"A read-only system\")"
  fi
  [ $is_lacking = 1 ] || say "nothing is missing"
  return $is_lacking
}

# What is about to be changed, before a byte is.
announce() { # HEAD, then what one a line
  say "$1"
  local what
  while read -r what; do [ -z "$what" ] || say "  - $what"; done
}

set_up() {
  announce "this will be written or changed, where it is not so already:" <<TEXT
packages of Debian: Node, a compiler for the GPIO package$([ $is_kiosk = no ] || echo ', a compositor and a browser')
/opt/spurwise, /etc/spurwise, /var/lib/spurwise
accounts spurwise$([ $is_kiosk = no ] || echo ' and spurwise-kiosk') (/etc/sysusers.d/spurwise.conf)
services under /etc/systemd/system, /etc/systemd/journald.conf.d/spurwise.conf
${boot#"$root"}/config.txt: the pins at rest, between two marker lines
$([ $is_kiosk = no ] && [ $is_read_only = no ] || echo "${boot#"$root"}/cmdline.txt")
$([ $is_read_only = no ] || echo '/etc/fstab: the partition of the data')
TEXT
  if [ $is_kiosk = yes ] && [ -e "$units/display-manager.service" ]; then
    fail "a desktop is installed and would fight over the screen: use Raspberry Pi OS Lite, or --no-kiosk"
  fi
  local node_here pins
  mkdir -p "$root/etc/spurwise"
  install_packages
  install_node
  if is_live; then node_here=$node_path; else node_here=node; fi
  pins=$("$node_here" "$here/board-pins.mjs" "$description")
  install_app
  add_accounts
  if [ -n "$update_key" ]; then put "$update_key" "$root/etc/spurwise/update-key.pem" 644; fi
  put_text "$root/etc/spurwise/spurwise.env" 644 <<TEXT
# Written by setup.sh; put changes of your own into local.env beside this file.
SPURWISE_DATA=/var/lib/spurwise
SPURWISE_BOARD=$board
SPURWISE_LINES=gpio
SPURWISE_PORT=$port
SPURWISE_RELEASE="$(sed -n 's/^release //p' <<<"$pins")"
$([ ! -f "$root/etc/spurwise/update-key.pem" ] || echo SPURWISE_UPDATE_KEY=/etc/spurwise/update-key.pem)
TEXT
  set_pins "$pins"
  make_read_only
  install_units
  if is_live; then
    systemctl daemon-reload
    systemctl restart systemd-journald spurwise.service
    if [ $is_kiosk = yes ]; then systemctl restart spurwise-kiosk.service; fi
    say "done; restart the Pi once, so that the pins have their pulls from power-up on"
  else
    say "done"
  fi
}

undo() {
  local word account group folder
  announce "this will be taken away:" <<TEXT
the services, accounts and settings of the bench, /opt/spurwise and /etc/spurwise
its lines in ${boot#"$root"}/config.txt, ${boot#"$root"}/cmdline.txt and /etc/fstab
$([ $is_delete_data = no ] || echo 'the attempts in /var/lib/spurwise, for good')
TEXT
  remove_unit spurwise-kiosk.service
  remove_unit spurwise.service
  for folder in $(noted folder | grep systemd || true); do rmdir "$root$folder" 2>/dev/null || true; done
  rm -f "$root/etc/systemd/journald.conf.d/spurwise.conf" "$root/etc/sysusers.d/spurwise.conf"
  drop_block "$boot/config.txt"
  # On a partition of their own the attempts go while it is mounted; one that stays mounted is never deleted through.
  if [ $is_delete_data = yes ] && [ -d "$root/var/lib/spurwise" ]; then
    find "$root/var/lib/spurwise" -xdev -mindepth 1 -delete
  fi
  if mountpoint -q "$root/var/lib/spurwise"; then
    umount "$root/var/lib/spurwise" || fail "/var/lib/spurwise is in use and stays mounted; stop what uses it, and run this again"
  fi
  if grep -q "^$block_start" "$root/etc/fstab" 2>/dev/null; then
    drop_block "$root/etc/fstab"
  fi
  for word in $(noted boot-word || true); do drop_boot_word "$word"; done
  for account in spurwise spurwise-kiosk; do
    if grep -q "^$account:" "$root/etc/passwd"; then userdel ${root:+--prefix "$root"} "$account"; fi
  done
  for group in $(noted group || true); do
    if grep -q "^$group:" "$root/etc/group"; then groupdel ${root:+--prefix "$root"} "$group"; fi
  done
  if [ -n "$(noted package || true)" ]; then
    say "these packages were installed for the bench and stay: $(noted package | tr '\n' ' ')"
  fi
  rm -rf "$root/opt/spurwise" "$root/opt/spurwise-node" "$root/etc/spurwise"
  for folder in "$root/etc/systemd/journald.conf.d" "$root/etc/sysusers.d"; do rmdir "$folder" 2>/dev/null || true; done
  rmdir "$root/var/lib/spurwise" 2>/dev/null || true
  if [ -d "$root/var/lib/spurwise" ]; then say "the attempts stay in /var/lib/spurwise"; fi
  if is_live; then
    systemctl daemon-reload
    systemctl restart systemd-journald
  fi
  say "undone"
}

if [ $is_check = yes ]; then
  check
elif [ $is_undo = yes ]; then
  undo
else
  set_up
fi
