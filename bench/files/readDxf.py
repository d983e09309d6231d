"""Reads DXF files with ezdxf, which none of the project's code has to do with.

python3 readDxf.py FILE... prints one line of JSON a file: the points of every polyline that is not frozen, and whether its
own audit found anything wrong.
"""

import json
import sys

import ezdxf

for name in sys.argv[1:]:
    document = ezdxf.readfile(name)
    auditor = document.audit()
    frozen = {layer.dxf.name for layer in document.layers if layer.is_frozen()}
    lines = []
    for entity in document.modelspace().query("LWPOLYLINE"):
        if entity.dxf.layer in frozen:
            continue
        points = [[x, y] for x, y, *_ in entity.get_points("xy")]
        if entity.closed:
            points.append(points[0])
        lines.append(points)
    print(json.dumps({"errors": len(auditor.errors), "lines": lines}))
