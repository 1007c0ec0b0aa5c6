"""Fiducials found by native OpenCV, as JSON: native-corners.py DICTIONARY PHOTO…  (sub-pixel corners, else defaults)."""
import json
import sys

import cv2

dictionary = cv2.aruco.Dictionary_get(getattr(cv2.aruco, sys.argv[1]))
settings = cv2.aruco.DetectorParameters_create()
settings.cornerRefinementMethod = cv2.aruco.CORNER_REFINE_SUBPIX
found = {}
for path in sys.argv[2:]:
    # Green, as this project searches it.
    picture = cv2.imread(path, cv2.IMREAD_COLOR)[:, :, 1]
    corners, ids, _ = cv2.aruco.detectMarkers(picture, dictionary, parameters=settings)
    found[path] = [
        {"id": int(i), "corners": four.reshape(4, 2).tolist()} for four, i in zip(corners, ids if ids is not None else [])
    ]
print(json.dumps(found))
