"""Frozen dataclasses that are cheap to define.

The house is full of small frozen trees, and the standard decorator writes and compiles six functions
for each, which took a third of the time of a whole `check`. Here the standard decorator still reads
the fields (so `fields`, `replace` and patterns work as ever); comparing, hashing and showing are
functions that all classes share, and `__init__` is written when the first instance is made.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from dataclasses import dataclass as dataclass
else:
    from dataclasses import MISSING, FrozenInstanceError, fields
    from dataclasses import dataclass as _standard
    from operator import attrgetter

    def dataclass(cls=None, /, *, frozen=False, slots=False, kw_only=False, eq=True):
        """A frozen dataclass; `slots` is accepted and keeps no instance smaller."""
        if cls is None:
            return lambda each: dataclass(each, frozen=frozen, slots=slots, kw_only=kw_only, eq=eq)
        if not frozen:
            return _standard(cls, kw_only=kw_only, eq=eq)
        return _cheaply(cls, kw_only, eq)

    def _cheaply(cls, kw_only, eq):
        own_equality = not eq or "__eq__" in vars(cls)
        _standard(cls, init=False, repr=False, eq=False, kw_only=kw_only)
        names = tuple(field.name for field in fields(cls))
        cls.__init__ = _first_init
        cls.__setattr__ = _no_setting
        cls.__delattr__ = _no_deleting
        cls.__repr__ = _shown
        if not own_equality:
            values = _values(names)
            cls.__eq__ = _equality(values)
            cls.__hash__ = _hashing(values)
        return cls

    def _values(names):
        """The fields of an instance as one value."""
        return attrgetter(*names) if names else lambda _: ()

    def _equality(values):
        def __eq__(self, other):
            if other.__class__ is not self.__class__:
                return NotImplemented
            return values(self) == values(other)

        return __eq__

    def _hashing(values):
        def __hash__(self):
            return hash(values(self))

        return __hash__

    def _first_init(self, *positional, **named):
        """Write the class's own `__init__`, once, and go on with it."""
        cls = next(each for each in type(self).__mro__ if "__dataclass_fields__" in vars(each))
        cls.__init__ = _written_init(cls)
        type(self).__init__(self, *positional, **named)

    def _written_init(cls):
        known = {}
        positional, keywords, lines = [], [], []
        for field in fields(cls):
            name = field.name
            value = name
            if field.default is not MISSING:
                known[f"_default_{name}"] = field.default
                wanted = f"{name}=_default_{name}"
            elif field.default_factory is not MISSING:
                known[f"_make_{name}"] = field.default_factory
                known["_missing"] = MISSING
                wanted = f"{name}=_missing"
                value = f"_make_{name}() if {name} is _missing else {name}"
            else:
                wanted = name
            (keywords if field.kw_only else positional).append(wanted)
            lines.append(f"    _into[{name!r}] = {value}")
        if keywords:
            positional.append("*")
        head = ", ".join(["self", *positional, *keywords])
        body = "\n".join(["    _into = self.__dict__", *lines])
        exec(f"def __init__({head}):\n{body}", known)
        return known["__init__"]

    def _no_setting(self, name, value):
        raise FrozenInstanceError(f"cannot assign to field {name!r}")

    def _no_deleting(self, name):
        raise FrozenInstanceError(f"cannot delete field {name!r}")

    def _shown(self):
        said = ", ".join(
            f"{field.name}={getattr(self, field.name)!r}" for field in fields(self) if field.repr
        )
        return f"{type(self).__qualname__}({said})"
