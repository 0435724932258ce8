"""The solver, silent and repeatable: HiGHS on one thread, with a fixed seed and limits that count steps, never seconds."""

from __future__ import annotations

import highspy


class Solver(highspy.Highs):
    """HiGHS without its banner. What it answers is advice: nothing is proven by it."""

    def __init__(self) -> None:
        super().__init__()  # type: ignore[no-untyped-call]
        for option, value in (
            ("threads", 1),
            ("random_seed", 0),
            ("parallel", "off"),
            ("simplex_iteration_limit", 20_000),
            ("mip_max_nodes", 50),
        ):
            self.setOptionValue(option, value)

    def enableCallbacks(self) -> None:  # noqa: N802 - the name is the library's, which calls it before it prints
        """Be silent from the start."""
        self.setOptionValue("output_flag", False)
        super().enableCallbacks()  # type: ignore[no-untyped-call]

    def optimal(self) -> bool:
        """Solve and say whether it claims an optimum; any other status is “do not know”."""
        self.run()
        return bool(self.getModelStatus() == highspy.HighsModelStatus.kOptimal)
