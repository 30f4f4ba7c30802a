#!/bin/sh
# Makes a certificate authority of the studio's own, and the broker's certificate by it.
#   certificates.sh FOLDER NAME      NAME: the broker's, as lanes and host write it in --broker
set -eu
folder=$1
name=$2
umask 077
mkdir -p "$folder"
cd "$folder"
openssl req -x509 -newkey ec -pkeyopt ec_paramgen_curve:P-256 -nodes -days 3650 -subj "/CN=studio" \
    -keyout ca.key -out ca.pem
openssl req -newkey ec -pkeyopt ec_paramgen_curve:P-256 -nodes -subj "/CN=$name" -keyout broker.key -out broker.csr
printf 'subjectAltName=DNS:%s\nextendedKeyUsage=serverAuth\nbasicConstraints=CA:FALSE\n' "$name" > broker.ext
openssl x509 -req -in broker.csr -CA ca.pem -CAkey ca.key -CAcreateserial -days 800 -extfile broker.ext -out broker.pem
rm broker.csr broker.ext
chmod 644 ca.pem broker.pem
