"""All quick sums, in the order a day meets them."""

from types import MappingProxyType

from krume.calc.bake_sums import BAKE_SUMS
from krume.calc.blend_sums import BLEND_SUMS
from krume.calc.convert_sum import CONVERT_SUMS
from krume.calc.cooling_sums import COOLING_SUMS
from krume.calc.egg_sums import EGG_SUMS
from krume.calc.keep_sums import KEEP_SUMS
from krume.calc.label_sums import LABEL_SUMS
from krume.calc.mixture_sums import MIXTURE_SUMS
from krume.calc.plan_sums import PLAN_SUMS
from krume.calc.print_sums import PRINT_SUMS
from krume.calc.rounding_sums import ROUNDING_SUMS
from krume.calc.slip_sums import SLIP_SUMS
from krume.calc.standing_sums import STANDING_SUMS
from krume.calc.tin_sums import TIN_SUMS
from krume.calc.torte_sums import TORTE_SUMS
from krume.calc.water_sums import WATER_SUMS

_ALL = (
    *CONVERT_SUMS,
    *TIN_SUMS,
    *TORTE_SUMS,
    *EGG_SUMS,
    *ROUNDING_SUMS,
    *BLEND_SUMS,
    *SLIP_SUMS,
    *MIXTURE_SUMS,
    *BAKE_SUMS,
    *COOLING_SUMS,
    *WATER_SUMS,
    *STANDING_SUMS,
    *KEEP_SUMS,
    *LABEL_SUMS,
    *PRINT_SUMS,
    *PLAN_SUMS,
)

SUMS = MappingProxyType({declared.name: declared for declared in _ALL})
