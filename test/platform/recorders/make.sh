#!/bin/sh
# A tone of 997 Hz, half of full scale, one second, as recorders save it: made once with Debian's ffmpeg 5.1 and kept.
cd "$(dirname "$0")" || exit 1
source='aevalsrc=0.5*sin(2*PI*997*t):s=48000:d=1'
ffmpeg -v error -y -f lavfi -i "$source" -c:a aac -b:a 64k -map_metadata -1 -fflags +bitexact tone.m4a
ffmpeg -v error -y -f lavfi -i "$source" -c:a libopus -b:a 48k -map_metadata -1 -fflags +bitexact tone.opus
