"""Prints a mesh file as the mesh library meshio reads it, in JSON."""

import json
import sys

import meshio

mesh = meshio.read(sys.argv[1])
print(
    json.dumps(
        {
            "points": mesh.points.tolist(),
            "cells": [{"type": block.type, "nodes": block.data.tolist()} for block in mesh.cells],
            "pointData": {name: values.tolist() for name, values in mesh.point_data.items()},
            "cellData": {
                name: [values.tolist() for values in blocks] for name, blocks in mesh.cell_data.items()
            },
            "fieldData": {name: values.tolist() for name, values in mesh.field_data.items()},
        }
    )
)
