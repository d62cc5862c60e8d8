"""The split of what is still to add that stays closest to the plan inside linear limits, exactly.

Amounts are whole steps of the scale. First the largest distance from the plan is as small as it
can be, then the sum of the squared distances; a search by bounds, not by rounding.
"""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field

_SLACK = 1e-9
_DIGITS = 9


@dataclass(frozen=True, slots=True)
class Limit:
    """One limit: the coefficients times the amounts add up to at most `most`."""

    coefficients: tuple[float, ...]
    most: float


@dataclass(frozen=True, slots=True)
class _Group:
    """Amounts that every limit treats alike: they can be shared out among themselves."""

    members: tuple[int, ...]
    coefficients: tuple[float, ...]


def closest_split(
    wanted: Sequence[float], *, total: int, limits: Sequence[Limit], distance: float = 0.0
) -> tuple[int, ...] | None:
    """Whole amounts of 0 or more with a given sum inside all limits, closest to what is wanted.

    `distance` is one that something else already has: below it a smaller largest distance
    gains nothing. None where no amounts lie inside the limits.

    >>> closest_split([300.0, 60.0, 90.0], total=390, limits=(), distance=60)
    (280, 40, 70)
    >>> no_more = (Limit((1.0, 0.0), 1.0),)
    >>> closest_split([2.0, 2.0], total=4, limits=no_more)
    (1, 3)
    >>> closest_split([2.0], total=-1, limits=()) is None
    True
    """
    if total < 0 or not wanted:
        return None
    search = _Search(tuple(wanted), total, _told_apart(limits, total))
    worst = search.least_worst(distance)
    return None if worst is None else search.best(worst)


def _told_apart(limits: Sequence[Limit], total: int) -> tuple[Limit, ...]:
    """The tightest limit of each direction; one that no amounts of this sum can break is left out.

    A limit of the same coefficient everywhere is about the sum alone: it is kept where it is
    broken, so that nothing is found.
    """
    tightest: dict[tuple[float, ...], Limit] = {}
    for limit in limits:
        scale = max(map(abs, limit.coefficients), default=0.0) or 1.0
        scaled = Limit(tuple(c / scale for c in limit.coefficients), limit.most / scale)
        key = tuple(round(c, _DIGITS) for c in scaled.coefficients)
        if key not in tightest or scaled.most < tightest[key].most:
            tightest[key] = scaled
    return tuple(each for each in tightest.values() if max(each.coefficients) * total > each.most)


@dataclass(frozen=True, slots=True)
class _Search:
    wanted: tuple[float, ...]
    total: int
    limits: tuple[Limit, ...]

    def least_worst(self, already: float) -> float | None:
        """Smallest largest distance at which amounts lie inside the limits."""
        if self._is_possible(already):
            return already
        offsets = sorted({o for w in self.wanted for o in (w % 1.0, 1.0 - w % 1.0)})
        low, high = 0, (self.total + math.ceil(max(map(abs, self.wanted))) + 1) * len(offsets)

        def distance(rank: int) -> float:
            return rank // len(offsets) + offsets[rank % len(offsets)]

        if not self._is_possible(distance(high)):
            return None
        while low < high:
            middle = (low + high) // 2
            if self._is_possible(distance(middle)):
                high = middle
            else:
                low = middle + 1
        return max(already, distance(low))

    def _is_possible(self, worst: float) -> bool:
        return next(self._vectors(self._boxes(worst)), None) is not None

    def _boxes(self, worst: float) -> list[tuple[int, int]]:
        return [
            (max(0, math.ceil(w - worst - _SLACK)), math.floor(w + worst + _SLACK))
            for w in self.wanted
        ]

    def _groups(self) -> list[_Group]:
        alike: dict[tuple[float, ...], list[int]] = {}
        for i in range(len(self.wanted)):
            alike.setdefault(tuple(limit.coefficients[i] for limit in self.limits), []).append(i)
        return [_Group(tuple(members), key) for key, members in alike.items()]

    def _vectors(self, boxes: list[tuple[int, int]]) -> Iterator[tuple[int, ...]]:
        """Group sums inside boxes and limits, one after the other."""
        groups = self._groups()
        spans = _spans(groups, boxes, self.limits)
        if all(low <= high for low, high in (*boxes, *spans)):
            yield from _fitting(groups, spans, self.total, [limit.most for limit in self.limits])

    def best(self, worst: float) -> tuple[int, ...]:
        """The amounts of smallest squared distance with no distance above the worst."""
        boxes, groups = self._boxes(worst), self._groups()
        spans = _spans(groups, boxes, self.limits)
        finder = _Finder(self.wanted, boxes, groups, spans)
        finder.look((), self.total, [limit.most for limit in self.limits])
        return finder.amounts()


def _spans(
    groups: list[_Group], boxes: list[tuple[int, int]], limits: Sequence[Limit]
) -> list[tuple[int, int]]:
    """Least and most of each group by its boxes and by the limits that are about it alone."""
    spans = []
    for at, group in enumerate(groups):
        low = sum(boxes[i][0] for i in group.members)
        high = sum(boxes[i][1] for i in group.members)
        for number, limit in enumerate(limits):
            others = (g.coefficients[number] for n, g in enumerate(groups) if n != at)
            if not any(others):
                low, high = _cut(low, high, group.coefficients[number], limit.most)
        spans.append((low, high))
    return spans


def _fitting(
    groups: list[_Group], spans: list[tuple[int, int]], total: int, room: list[float]
) -> Iterator[tuple[int, ...]]:
    """All sums of the groups inside their spans that use up the total and fit the room."""
    low, high = _range_of_first(groups, spans, total, room)
    for amount in range(low, high + 1):
        left = _after(room, groups[0], amount)
        if len(groups) == 1:
            yield (amount,)
        else:
            for rest in _fitting(groups[1:], spans[1:], total - amount, left):
                yield (amount, *rest)


def _after(room: list[float], group: _Group, amount: int) -> list[float]:
    return [r - c * amount for r, c in zip(room, group.coefficients, strict=True)]


def _range_of_first(
    groups: list[_Group], spans: list[tuple[int, int]], total: int, room: list[float]
) -> tuple[int, int]:
    """Sums of the first group that the others' spans and the limits leave open.

    With two groups left this is exact: the second is the rest of the total.
    """
    others_low = sum(low for low, _ in spans[1:])
    others_high = sum(high for _, high in spans[1:])
    low, high = max(spans[0][0], total - others_high), min(spans[0][1], total - others_low)
    for at, most in enumerate(room):
        mine, rest = groups[0].coefficients[at], [g.coefficients[at] for g in groups[1:]]
        if len(rest) <= 1:
            low, high = _cut(low, high, mine - sum(rest), most - sum(rest) * total)
        else:
            least = sum(min(c * s[0], c * s[1]) for c, s in zip(rest, spans[1:], strict=True))
            low, high = _cut(low, high, mine, most - least)
    return low, high


def _cut(low: int, high: int, slope: float, most: float) -> tuple[int, int]:
    """The part of a range where slope times the amount is at most `most`."""
    slack = _SLACK * max(1.0, abs(most))
    if abs(slope) <= _SLACK:
        return (low, high) if most >= -slack else (1, 0)
    edge = (most + slack) / slope
    return (low, min(high, math.floor(edge))) if slope > 0 else (max(low, math.ceil(edge)), high)


@dataclass(frozen=True, slots=True)
class _Leans:
    """Of some parts: how many, what is wanted of all, and each limit's coefficients over them."""

    count: int
    wanted: float
    sums: tuple[float, ...]
    at_wanted: tuple[float, ...]
    spread: tuple[float, ...]


@dataclass(slots=True)
class _Finder:
    """Looks for the group sums of smallest cost, near ones first, and leaves out what is worse."""

    wanted: tuple[float, ...]
    boxes: list[tuple[int, int]]
    groups: list[_Group]
    spans: list[tuple[int, int]]
    cost: float = math.inf
    found: tuple[int, ...] = ()
    leans: dict[int, _Leans] = field(default_factory=dict)

    def look(self, fixed: tuple[int, ...], total: int, room: list[float]) -> None:
        """Extend the sums fixed so far by the next group's, nearest first, on both sides.

        With two groups left the range is exact and the cost bends one way only: the amount
        nearest to the best one without limits is the best inside them.
        """
        at = len(fixed)
        low, high = _range_of_first(self.groups[at:], self.spans[at:], total, room)
        if low > high:
            return
        if at == len(self.groups) - 1:
            self._keep((*fixed, low))
            return
        if at == len(self.groups) - 2:
            start = min(max(self._nearest(at, total), low), high)
            self._keep((*fixed, start, total - start))
            return
        start = min(max(self._middle(at, total), low), high)
        self._outward((range(start, high + 1), range(start - 1, low - 1, -1)), fixed, total, room)

    def _outward(
        self, sides: tuple[range, range], fixed: tuple[int, ...], total: int, room: list[float]
    ) -> None:
        """Try a group's sums from its middle outward; both bounds bend one way only.

        What costs more without limits than what was found costs more still further out; what costs
        more by a limit may come inside it further out, and does not come back after that.
        """
        group = self.groups[len(fixed)]
        for side in sides:
            was_inside = False
            for amount in side:
                left = _after(room, group, amount)
                plain, leaning = self._bounds((*fixed, amount), total - amount, left)
                if plain >= self.cost - _SLACK:
                    break
                if leaning < self.cost - _SLACK:
                    was_inside = True
                    self.look((*fixed, amount), total - amount, left)
                elif was_inside:
                    break

    def _keep(self, sums: tuple[int, ...]) -> None:
        cost = sum(self._cost(at, amount) for at, amount in enumerate(sums))
        if cost < self.cost - _SLACK:
            self.cost, self.found = cost, sums

    def _rest(self, at: int) -> tuple[int, ...]:
        return tuple(i for group in self.groups[at:] for i in group.members)

    def _middle(self, at: int, total: int) -> int:
        """Sum of a group when all from it on stand equally far from what is wanted."""
        leans, members = self._leans(at), self.groups[at].members
        shift = (total - leans.wanted) / leans.count
        return round(sum(self.wanted[i] + shift for i in members))

    def _nearest(self, at: int, total: int) -> int:
        """Sum of a group when the rest is shared out without limits."""
        members = self._rest(at)
        shared = shared_out(self.wanted, self.boxes, members, total)
        return sum(shared[: len(self.groups[at].members)])

    def _bounds(
        self, fixed: tuple[int, ...], rest_total: int, room: list[float]
    ) -> tuple[float, float]:
        """No sums that begin like this cost less: without limits, and with each single one kept.

        Without boxes the rest stands at c + m, m = (T - sum c) / n; a limit a x <= b that it
        breaks by v costs v2 / |a - mean a|2 more.
        """
        spent = sum(self._cost(at, amount) for at, amount in enumerate(fixed))
        leans = self._leans(len(fixed))
        shift = (rest_total - leans.wanted) / leans.count
        most = 0.0
        for at, b in enumerate(room):
            over = leans.at_wanted[at] + shift * leans.sums[at] - b
            if over > _SLACK * max(1.0, abs(b)):
                if leans.spread[at] <= _SLACK:
                    most = math.inf
                    break
                most = max(most, over * over / leans.spread[at])
        plain = spent + leans.count * shift * shift
        return plain, plain + most

    def _leans(self, at: int) -> _Leans:
        """Sums over the parts from a group on, worked out once."""
        if at not in self.leans:
            rest = [
                (self.wanted[i], group.coefficients)
                for group in self.groups[at:]
                for i in group.members
            ]
            columns = list(zip(*(row for _, row in rest), strict=True))
            self.leans[at] = _Leans(
                len(rest),
                sum(w for w, _ in rest),
                tuple(sum(column) for column in columns),
                tuple(sum(a * w for a, (w, _) in zip(c, rest, strict=True)) for c in columns),
                tuple(sum((a - sum(c) / len(c)) ** 2 for a in c) for c in columns),
            )
        return self.leans[at]

    def _cost(self, at: int, amount: int) -> float:
        return self._squares(self.groups[at].members, amount)

    def _squares(self, members: tuple[int, ...], total: int) -> float:
        shared = shared_out(self.wanted, self.boxes, members, total)
        return sum((x - self.wanted[i]) ** 2 for i, x in zip(members, shared, strict=True))

    def amounts(self) -> tuple[int, ...]:
        """The amounts behind the best sums."""
        out = [0] * len(self.wanted)
        for group, amount in zip(self.groups, self.found, strict=True):
            shared = shared_out(self.wanted, self.boxes, group.members, amount)
            for i, x in zip(group.members, shared, strict=True):
                out[i] = x
        return tuple(out)


def shared_out(
    wanted: Sequence[float], boxes: Sequence[tuple[int, int]], members: Sequence[int], total: int
) -> list[int]:
    """Whole amounts in their boxes with a given sum and the smallest squared distances.

    Each step goes where it costs least: the cost of one more grows with each, so this is exact.
    """
    shift = (total - sum(wanted[i] for i in members)) / len(members)
    out = [min(max(math.floor(wanted[i] + shift + 0.5), boxes[i][0]), boxes[i][1]) for i in members]
    off = total - sum(out)
    while off:
        step = 1 if off > 0 else -1
        may = [at for at, i in enumerate(members) if boxes[i][0] <= out[at] + step <= boxes[i][1]]
        if not may:
            return out
        at = min(may, key=lambda n: (step * 2 * (out[n] - wanted[members[n]]), n))
        out[at] += step
        off -= step
    return out
