"""Run every benchmark: `python -m tests.bench`, or some: `python -m tests.bench check start`."""

import importlib
import pkgutil
import sys

import tests.bench


def main(wanted: list[str]) -> None:
    """Run the benchmarks named, or all of them."""
    for module in pkgutil.iter_modules(tests.bench.__path__):
        name = module.name.removeprefix("bench_")
        if module.name.startswith("bench_") and (not wanted or name in wanted):
            print(f"\n{name}")
            importlib.import_module(f"tests.bench.{module.name}").main()


main(sys.argv[1:])
