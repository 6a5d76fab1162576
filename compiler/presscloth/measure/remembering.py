"""Answers that are remembered, of numbers that stand still."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import is_dataclass
from functools import lru_cache, wraps
from typing import ParamSpec, TypeVar, cast

from presscloth.measure.followed import Followed, FollowedText
from presscloth.measure.following import is_following

_Asked = ParamSpec("_Asked")
_Told = TypeVar("_Told")


def remembered(most: int) -> Callable[[Callable[_Asked, _Told]], Callable[_Asked, _Told]]:
    """Remember that many answers of a function from recipe to recipe, but none of followed numbers.

    Two choices are reckoned alike and so look alike, and yet an answer that held a number to its value
    holds for one of them only.
    """

    def remember(function: Callable[_Asked, _Told]) -> Callable[_Asked, _Told]:
        known = cast(Callable[_Asked, _Told], lru_cache(most)(function))

        @wraps(function)
        def asked(*arguments: _Asked.args, **named: _Asked.kwargs) -> _Told:
            follows = is_following() and _holds_followed((arguments, tuple(named.values())))
            return (function if follows else known)(*arguments, **named)

        return asked

    return remember


def _holds_followed(value: object) -> bool:
    """Whether something followed stands anywhere in a value: a number, a text, or a tree of them."""
    match value:
        case Followed() | FollowedText():
            return True
        case tuple():
            return any(map(_holds_followed, value))
        case _:
            return is_dataclass(value) and any(map(_holds_followed, vars(value).values()))
