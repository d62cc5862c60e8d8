"""What the oven does: its dial, browning, exact heating of plain shapes."""

from krume.bake.browning import browning_delta_e
from krume.bake.dial_setting import Dial, dial
from krume.bake.series import heating_theta

__all__ = ["Dial", "browning_delta_e", "dial", "heating_theta"]
