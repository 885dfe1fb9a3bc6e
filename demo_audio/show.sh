#!/usr/bin/env bash
# `make demo`: reads the demo recordings into a notebook of their own (BENCHNOTES_HOME) and shows what came out.
# A second run reads nothing again.
set -euo pipefail
cd "$(dirname "$0")"

echo "Reading two visits to a hat steamer, from sound ..."
"$NOTES" read hat-steamer-1-inspection.opus hat-steamer-2-repair.opus --job "hat steamer" --currency GBP
echo "Reading a coin-operated viewer, from a film ..."
"$NOTES" read boardwalk-viewer.mp4 --job "boardwalk viewer" --currency USD

echo
"$NOTES" show "hat steamer"
echo
"$NOTES" left "hat steamer"

if [ -t 1 ]; then
  echo
  echo "Look further, in this demo's own notebook:"
  echo "  export BENCHNOTES_HOME=$BENCHNOTES_HOME"
  for words in 'show "boardwalk viewer"' 'left "boardwalk viewer"' 'find "safety valve"' 'export "hat steamer" --to steamer'; do
    echo "  .venv/bin/benchnotes $words"
  done
fi
