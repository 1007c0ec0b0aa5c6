"""
Decode, find, rectify, threshold in native OpenCV: native-chain.py PHOTO prints the median milliseconds of warm runs.
The search runs on a picture four times smaller with corners refined at full size, as this project does it.
"""
import statistics
import sys
import time

import cv2
import numpy

dictionary = cv2.aruco.Dictionary_get(cv2.aruco.DICT_4X4_50)
settings = cv2.aruco.DetectorParameters_create()


def chain(path):
    picture = cv2.imread(path, cv2.IMREAD_COLOR)
    grey = cv2.cvtColor(picture, cv2.COLOR_BGR2GRAY)
    small = cv2.resize(grey, None, fx=0.25, fy=0.25, interpolation=cv2.INTER_AREA)
    corners, ids, _ = cv2.aruco.detectMarkers(small, dictionary, parameters=settings)
    found = (numpy.concatenate([four.reshape(4, 2) for four in corners]).astype(numpy.float32) + 0.5) * 4 - 0.5
    fine = cv2.cornerSubPix(grey, found, (9, 9), (-1, -1), (cv2.TERM_CRITERIA_EPS + cv2.TERM_CRITERIA_MAX_ITER, 30, 0.01))
    # Any plane does for timing: the four outermost corners become the map's corners.
    hull = cv2.boxPoints(cv2.minAreaRect(fine))
    square = numpy.array([[0, 0], [351, 0], [351, 447], [0, 447]], numpy.float32)
    rectified = cv2.warpPerspective(picture, cv2.getPerspectiveTransform(hull.astype(numpy.float32), square), (352, 448))
    cv2.threshold(cv2.cvtColor(rectified, cv2.COLOR_BGR2GRAY), 0, 255, cv2.THRESH_OTSU)


times = []
for run in range(8):
    start = time.perf_counter()
    chain(sys.argv[1])
    times.append(1000 * (time.perf_counter() - start))
print(statistics.median(times[1:]))
