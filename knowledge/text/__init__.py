"""Reading what cooks write. `read` is the way in; `normalise.key` is how names are looked up."""

from __future__ import annotations

from knowledge.text.read import foods_in, read

__all__ = ["foods_in", "read"]
