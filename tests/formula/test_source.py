from __future__ import annotations

import pickle

from generator.formula.source import Constant, derived


def test_a_constant_goes_to_another_process_with_its_unit_and_source() -> None:
    weight = Constant(9.81, "kN/m**3", derived("1000 kg/m3 x 9.81 m/s2"))
    again = pickle.loads(pickle.dumps(weight))  # noqa: S301 (our own bytes)
    assert (again, again.unit, again.source) == (9.81, weight.unit, weight.source)
    assert isinstance(again, Constant)
