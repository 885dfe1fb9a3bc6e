#!/usr/bin/env bash
# Several trainings side by side:  folds.sh WEIGHTS OUT "NAME FOLD GPU OPTIONS..." ...
# Logs and marks of every run land in OUT/runs.tgz, the marker that learns from everything (fold -1) beside it.
set -u
weights=$1 out=$2
shift 2
export PYTHONPATH=. PYTHONUNBUFFERED=1 OMP_NUM_THREADS=2
for run in "$@"; do
  read -r name fold gpu options <<<"$run"
  mkdir -p "/tmp/runs/$name"
  # shellcheck disable=SC2086
  CUDA_VISIBLE_DEVICES=$gpu timeout 540 python3 -m training.train --weights "$weights" --fold "$fold" --out "/tmp/runs/$name" $options \
    >"/tmp/runs/$name/log-$fold" 2>&1 &
done
wait
mv /tmp/runs/*/marker-*.npz "$out" 2>/dev/null
tar czf "$out/runs.tgz" -C /tmp/runs .
grep -h "statement" /tmp/runs/*/log-* | cut -c1-200
tail -qn 1 /tmp/runs/*/log-* | cut -c1-200
