#!/bin/sh
# Installs the published program as a systemd service, or brings an installed one up to it. Sites, ledgers and settings are never touched.
#   sudo sh install.sh PUBLISHED               PUBLISHED: the folder that `dotnet publish` wrote
#   sudo sh install.sh --remove                takes the program and its unit away; /var/lib/dailyadjust and /etc/dailyadjust stay
#   sh install.sh --root DIR PUBLISHED         the same below DIR, for an image or a trial; nothing is started
set -eu

here=$(cd "$(dirname "$0")" && pwd)
root=
published=
remove=
while [ $# -gt 0 ]; do
  case $1 in
    --root) root=${2:?--root needs a folder}; shift 2 ;;
    --remove) remove=1; shift ;;
    -*) echo "install.sh: unknown option $1" >&2; exit 2 ;;
    *) published=$1; shift ;;
  esac
done

if [ -n "$root" ]; then root=$(cd "$root" && pwd); fi
program=$root/opt/dailyadjust
home=$root/var/lib/dailyadjust
unit=$root/etc/systemd/system/dailyadjust.service
secrets=$root/etc/dailyadjust/secrets.env

# Below a root of its own nothing runs; systemctl and sysusers then work on the files alone.
running() { [ -z "$root" ] && systemctl is-active --quiet dailyadjust; }
enable() { if [ -n "$root" ]; then systemctl --root="$root" "$1" dailyadjust; else systemctl "$1" dailyadjust; fi; }

if [ -z "$root" ] && [ "$(id -u)" -ne 0 ]; then
  echo 'install.sh: run it as root (sudo), or give --root DIR' >&2
  exit 1
fi

if [ -n "$remove" ]; then
  if running; then systemctl stop dailyadjust; fi
  if [ -e "$unit" ]; then enable disable; fi
  rm -rf "$program" "$program.before" "$unit"
  echo "Removed. Sites and ledgers are still in $home, secrets in $(dirname "$secrets")."
  exit 0
fi

if [ ! -x "$published/dailyadjust" ]; then
  echo "install.sh: there is no program in \"$published\". Build it: dotnet publish src/DailyAdjust.Service -c Release -r linux-x64 --self-contained -o FOLDER" >&2
  exit 2
fi

# Before anything is changed: a program that does not start here (no .NET, another processor) replaces nothing.
version=$("$published/dailyadjust" --version)

install -d -m 755 "$root/usr/lib/sysusers.d" "$root/etc/systemd/system" "$(dirname "$program")"
install -m 644 "$here/dailyadjust.sysusers.conf" "$root/usr/lib/sysusers.d/dailyadjust.conf"
if [ -n "$root" ]; then systemd-sysusers --root="$root" "$root/usr/lib/sysusers.d/dailyadjust.conf"; else systemd-sysusers dailyadjust.conf; fi
user=$(grep '^dailyadjust:' "$root/etc/passwd" | cut -d: -f3)
group=$(grep '^dailyadjust:' "$root/etc/passwd" | cut -d: -f4)

install -d -m 750 "$home"
install -d -m 700 "$(dirname "$secrets")"
if [ "$(id -u)" -eq 0 ]; then chown "$user:$group" "$home"; fi
[ -e "$secrets" ] || install -m 600 /dev/null "$secrets"
install -m 644 "$here/appsettings.sample.json" "$home/appsettings.sample.json"

was_running=
if running; then
  was_running=1
  # The program that knows these ledgers backs them up, before a newer one changes their tables.
  runuser -u dailyadjust -- "$program/dailyadjust" backup --home "$home" || { echo 'install.sh: the backup failed; nothing was changed' >&2; exit 1; }
  systemctl stop dailyadjust
fi

rm -rf "$program.new" && mkdir "$program.new" && cp -R "$published/." "$program.new" && chmod -R u=rwX,go=rX "$program.new"
if [ -d "$program" ]; then rm -rf "$program.before" && mv "$program" "$program.before"; fi
mv "$program.new" "$program"
install -m 644 "$here/dailyadjust.service" "$unit"
enable enable

if [ -z "$root" ]; then
  systemctl daemon-reload
  systemctl restart dailyadjust
fi
echo "Installed $version in $program${was_running:+; the one before is in $program.before}."
echo "Next: sudo -u dailyadjust /opt/dailyadjust/dailyadjust new --home /var/lib/dailyadjust"
echo "      sudo -u dailyadjust /opt/dailyadjust/dailyadjust doctor --home /var/lib/dailyadjust"
