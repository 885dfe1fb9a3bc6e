#!/usr/bin/env bash
# `make demo`: reads the demo recordings into a notebook of their own (the folder given) and shows what came out.
# A second run reads nothing again.
#   show.sh FOLDER PYTHON
set -euo pipefail
home=$1 python=$2
cd "$(dirname "$0")"
export BENCHNOTES_HOME=$home

notes() { "$python" -m benchnotes "$@"; }

echo "Reading two visits to a hat steamer, from sound ..."
notes read hat-steamer-1-inspection.opus hat-steamer-2-repair.opus --job "hat steamer" --currency GBP
echo "Reading a coin-operated viewer, from a film ..."
notes read boardwalk-viewer.mp4 --job "boardwalk viewer" --currency USD

echo
notes show "hat steamer"
echo
notes left "hat steamer"

if [ -t 0 ] && [ -t 1 ]; then
  echo
  echo "Look further, in this demo's own notebook:"
  echo "  export BENCHNOTES_HOME=$home"
  for words in 'show "boardwalk viewer"' 'left "boardwalk viewer"' 'find "safety valve"' 'export "hat steamer" --to steamer'; do
    echo "  .venv/bin/benchnotes $words"
  done
  echo
  read -r -p "Enter opens the app on these two jobs; n and Enter leaves it: " answer
  [[ $answer == [nN]* ]] || notes
fi
