"""The outlines of flat faces, as the workings know them."""

from __future__ import annotations

from benchalong.workings.bodies import Floats as Floats
from benchalong.workings.bodies import Ints as Ints
from benchalong.workings.faces import Bools as Bools
from benchalong.workings.faces import FlatFaces as FlatFaces
from benchalong.workings.faces import flat_faces as flat_faces
from benchalong.workings.faces import vector_areas as vector_areas
