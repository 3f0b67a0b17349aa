"""What the shop has: bars, mesh and angles, as the plan may choose from them."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import BaseModel, ConfigDict, Field

from generator.problems.plain_errors import read_model


class _Strict(BaseModel):
    model_config = ConfigDict(frozen=True, extra="forbid", strict=True)


class Bar(_Strict):
    """A bar or wire that the shop sells.

    Args:
        diameter: [mm].
        ribbed: steel of unknown kind counts as plain.
        length: of a bar as sold [m].
    """

    diameter: Annotated[float, Field(ge=3, le=16)]
    ribbed: bool = False
    length: Annotated[float, Field(ge=4, le=12)] = 12.0


class Mesh(_Strict):
    """A roll of mesh.

    Args:
        kind: how its wires are joined; only square mesh has wires that lie along the pull.
        wire: thickness of a wire [mm].
        opening: from wire to wire [mm].
        thickness: of one layer as tied, pressed with the hand [mm].
        width: of the roll [m].
        length: of the roll [m].
    """

    kind: Literal["welded", "woven", "hexagonal"]
    wire: Annotated[float, Field(ge=0.5, le=4)]
    opening: Annotated[float, Field(ge=6, le=150)]
    thickness: Annotated[float, Field(ge=1, le=8)]
    width: Annotated[float, Field(ge=0.6, le=2.5)]
    length: Annotated[float, Field(ge=10, le=50)]

    @property
    def square(self) -> bool:
        """Whether its wires lie along and across the pull."""
        return self.kind != "hexagonal"


class Angle(_Strict):
    """An equal angle.

    Args:
        leg: [mm].
        thickness: of a leg [mm].
        length: as sold [m].
    """

    leg: Annotated[float, Field(ge=20, le=65)]
    thickness: Annotated[float, Field(ge=3, le=8)]
    length: Annotated[float, Field(ge=3, le=12)] = 6.0


class Shop(_Strict):
    """Everything that the shop sells for a tank; lists may be empty, and then the plan says an honest no."""

    format: Literal[1] = 1
    bars: Annotated[tuple[Bar, ...], Field(strict=False)] = ()
    meshes: Annotated[tuple[Mesh, ...], Field(strict=False)] = ()
    angles: Annotated[tuple[Angle, ...], Field(strict=False)] = ()

    def cut_to(self, length: float) -> Shop:
        """The same shop, its bars cut to one length for carrying; a shorter bar stays as it is.

        Args:
            length: [m], 4 to 12.
        """
        bars = tuple(bar.model_copy(update={"length": min(bar.length, length)}) for bar in self.bars)
        return self.model_copy(update={"bars": bars})


USUAL_SHOP = Shop(
    bars=(
        Bar(diameter=6),
        Bar(diameter=8),
        Bar(diameter=8, ribbed=True),
        Bar(diameter=10, ribbed=True),
        Bar(diameter=12, ribbed=True),
    ),
    meshes=(
        Mesh(kind="welded", wire=1.6, opening=25, thickness=5, width=1.2, length=15),
        Mesh(kind="hexagonal", wire=0.8, opening=12, thickness=4, width=0.9, length=30),
    ),
    angles=(Angle(leg=25, thickness=3), Angle(leg=30, thickness=3), Angle(leg=35, thickness=5)),
)
"""What a town's shop usually has (common practice): used where nobody says what is for sale."""


def read_shop(name: str, data: bytes) -> Shop:
    """A shop's list from a YAML file.

    Args:
        name: of the file, for its problems.
        data: its bytes.

    Raises:
        ProblemsError: everything that is wrong with it.
    """
    return read_model(name, data, Shop)
