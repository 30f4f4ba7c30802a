#!/usr/bin/env bash
# Makes what the emulated board boots from, out of Debian's own arm64 packages: build.sh FOLDER
# Leaves kernel, board.dtb and base.cpio there; made once, and kept as long as this script does not change. Its first
# process, init, comes in an archive that the test puts behind base.cpio.
set -euo pipefail
out=${1:?which folder}
for program in qemu-system-aarch64 dtc fdtput cpio dpkg-deb apt-get; do
    command -v "$program" >/dev/null || { echo "$program is missing: apt-get install qemu-system-arm device-tree-compiler cpio" >&2; exit 2; }
done
stamp=$(sha256sum < "$0")
[ "$(cat "$out/stamp" 2>/dev/null)" = "$stamp" ] && exit 0
rm -rf "$out"
mkdir -p "$out"/apt/{lists,cache/archives}/partial "$out/debs" "$out/root/bin" "$out/root/modules"
out=$(cd "$out" && pwd)

# 1. arm64 packages, by lists of their own: the machine's stay as they are.
touch "$out/apt/status"
cat > "$out/apt/conf" <<CONF
APT::Architecture "arm64";
APT::Architectures { "arm64"; };
APT::Sandbox::User "root";
Dir::State::Lists "$out/apt/lists";
Dir::State::status "$out/apt/status";
Dir::Cache "$out/apt/cache";
CONF
export APT_CONFIG=$out/apt/conf
apt-get -qq update
kernel=$(apt-cache depends linux-image-cloud-arm64 | awk '/Depends: linux-image/ { print $2; exit }')
(cd "$out/debs" && apt-get -qq download "$kernel" busybox-static libc6 libgcc-s1 libstdc++6 zlib1g openjdk-17-jre-headless)

# 2. Kernel and root file system. Of the kernel's modules only the network card's: all else that is needed is built in.
modules='virtio_ring virtio virtio_pci_legacy_dev virtio_pci_modern_dev virtio_pci failover net_failover virtio_net'
echo "$modules" > "$out/root/modules/order"
for deb in "$out"/debs/*.deb; do
    case "$deb" in
        */linux-image*)
            dpkg-deb -x "$deb" "$out/kernel-files"
            cp "$out"/kernel-files/boot/vmlinuz-* "$out/kernel"
            for module in $modules; do
                find "$out/kernel-files" -name "$module.ko" -exec cp {} "$out/root/modules/" \;
            done ;;
        *) dpkg-deb -x "$deb" "$out/root" ;;
    esac
done
(cd "$out" && rm -rf root/usr/share kernel-files debs apt/lists)
(cd "$out/root" && find . | cpio -o -H newc --quiet > "$out/base.cpio")
rm -rf "$out/root"

# 3. The machine's device tree, told as a board that Pi4J knows, whose GPIO chip is free for it.
qemu-system-aarch64 -M virt,dumpdtb="$out/virt.dtb" -cpu cortex-a72 -smp 1 -m 1024 -nic none -nographic >/dev/null 2>&1
fdtput -t s "$out/virt.dtb" / model 'Raspberry Pi 4 Model B Rev 1.4'
fdtput -r "$out/virt.dtb" /gpio-keys
dtc -q -I dtb -O dts "$out/virt.dtb" | sed 's/pl061@9030000/pinctrl-bcm2711@9030000/' | dtc -q -I dts -O dtb -o "$out/board.dtb"
echo "$stamp" > "$out/stamp"
