#!/bin/sh
# Does on a bare Debian 12 what README says, to the letter: its two commands in a fresh chroot, and in another one the
# Debian packages that came out of the first: installed, built against by find_package and by pkg-config, purged.
#
#   bare_machine.sh [FOLDER]    default build/bare_machine; must not exist yet, and is left to be looked at and removed
#
# What is committed is tried, not what lies beside it. Needs root, debootstrap, git, the network, 5 GB and an hour or
# more. HYDRO_MIRROR is where Debian is fetched from.
set -eu
root=$(CDPATH='' cd -- "$(dirname -- "$0")/.." && pwd)

# Mounts of a namespace of its own are gone when the last process in it is, however it ends.
if [ "${1-}" != --in-own-mounts ]; then
  exec unshare --mount --propagation private sh "$0" --in-own-mounts "${1:-$root/build/bare_machine}"
fi
folder=$2
mirror=${HYDRO_MIRROR:-http://deb.debian.org/debian}

[ ! -e "$folder" ] || {
  echo "$folder is there already: name another folder, or remove it" >&2
  exit 2
}
mkdir -p "$folder"
folder=$(CDPATH='' cd -- "$folder" && pwd)
began=$(date +%s)

say() {
  printf '[%4d s] %s\n' "$(($(date +%s) - began))" "$*"
}

# machine NAME: a copy of the bare one.
machine() {
  cp -a "$folder/bare" "$folder/$1"
  mount -t proc proc "$folder/$1/proc"
  mount -t devpts devpts "$folder/$1/dev/pts"
  mount -t tmpfs tmpfs "$folder/$1/dev/shm"
}

# on NAME COMMAND: runs it there as root, with nothing of this machine's environment; what it says goes into NAME.log.
on() {
  chroot "$folder/$1" /usr/bin/env -i HOME=/root PATH=/usr/sbin:/usr/bin:/sbin:/bin sh -c "cd /root && $2" \
    >>"$folder/$1.log" 2>&1 </dev/null || {
    tail -n 50 "$folder/$1.log"
    say "FAILED on $1: $2 (all of it in $folder/$1.log)"
    exit 1
  }
}

packages_on() {
  # shellcheck disable=SC2016  # dpkg-query's own variable
  chroot "$folder/$1" dpkg-query -W -f '${Package}\n' | sort
}

# Prints the packages that NAME has and the bare machine has not.
added_on() {
  packages_on "$1" | comm -13 "$folder/bare.packages" - | tr '\n' ' ' | fold -s -w 118 | sed 's/^/    /'
  echo
}

say "a bare Debian 12, from $mirror"
debootstrap --variant=minbase bookworm "$folder/bare" "$mirror" >"$folder/debootstrap.log" 2>&1 || {
  tail "$folder/debootstrap.log"
  exit 1
}
cp /etc/resolv.conf "$folder/bare/etc/resolv.conf"
packages_on bare >"$folder/bare.packages"
say "it has $(wc -l <"$folder/bare.packages") packages"

machine builder
git clone -q --no-hardlinks "$root" "$folder/builder/root/hydro"
say "sh examples/run.sh, at $(git -C "$folder/builder/root/hydro" log -1 --format='%h, %s')"
on builder "cd hydro && sh examples/run.sh >/root/report.txt"
cmp "$folder/builder/root/report.txt" "$folder/builder/root/hydro/examples/expected/ouzel_bench_sheared.txt"
packages_on builder >"$folder/first.packages"
say "it printed what README shows; the machine has $(wc -l <"$folder/first.packages") packages, and besides the bare ones:"
added_on builder

say "sh tests/run.sh"
on builder "cd hydro && sh tests/run.sh"
grep -E "tests passed|tests failed|^Total Test time|\(Skipped\)" "$folder/builder.log"
packages_on builder >"$folder/second.packages"
say "the machine has $(wc -l <"$folder/second.packages") packages; those that the tests asked for:"
grep "^Installing:" "$folder/builder.log" | tail -n 1 | fold -s -w 118 | sed 's/^/    /'

say "(cd build/tests && cpack)"
on builder "cd hydro/build/tests && cpack"

machine user
cp "$folder"/builder/root/hydro/build/tests/*.deb "$folder/user/root"
cp -R "$folder/builder/root/hydro/tests/consumer" "$folder/user/root"
say "apt-get install of $(cd "$folder/user/root" && echo *.deb)"
on user "apt-get update && apt-get install -y --no-install-recommends ./hydro-laterals_*.deb ./libhydro[0-9]*.deb"
say "the programs and what they run with:"
added_on user
on user "check_line /usr/share/doc/hydro-laterals/examples/ouzel_strips.toml >report.txt || [ \$? -eq 1 ]"
grep -q "outlet 7 is broken" "$folder/user/root/report.txt"
on user "apt-get install -y --no-install-recommends ./*.deb g++ make cmake pkgconf"

say "tests/consumer by find_package and by pkg-config"
on user "cmake -S consumer/find_package -B consumer/build && cmake --build consumer/build && consumer/build/stranger >by_cmake.txt"
# shellcheck disable=SC2016  # the substitution is for the shell there
on user 'g++ -std=c++20 consumer/stranger.cpp $(pkg-config --cflags --libs hydro) -o stranger && ./stranger >by_pkg_config.txt'
cmp "$folder/user/root/by_cmake.txt" "$folder/user/root/by_pkg_config.txt"
sed 's/^/    /' "$folder/user/root/by_cmake.txt"

on user "apt-get purge -y hydro-laterals libhydro-dev 'libhydro[0-9]*'"
left=$(find "$folder/user/usr" "$folder/user/etc" "$folder/user/var/lib/dpkg/info" -name '*hydro*')
[ -z "$left" ] || {
  say "purging left: $left"
  exit 1
}
say "purged, nothing left: README holds on a bare machine"
