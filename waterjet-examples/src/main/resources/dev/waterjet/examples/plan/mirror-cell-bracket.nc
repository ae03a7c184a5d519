%
O12 (Hollow Ridge workshop: bracket of the mirror cell)
(edges of the part; the machine offsets the jet to the left of the path)
N10 G71 G90 G17 G40

(waterjet: name bore for the mirror bearing, quality fine, tolerance 0.05 mm)
N20 G0 X92 Y56
N30 M3
N40 G41 D1 G3 X102 Y56 I5 J0
N50 G3 I-22 J0
N60 G3 X97 Y61 I-5 J0
N70 M5 G40

(waterjet: name flexure slit left)
N100 G0 X36 Y56
N110 M3
N120 G41 D1 G1 X37.2
N130 Y70.8
N140 G3 X34.8 I-1.2
N150 G1 Y41.2
N160 G3 X37.2 I1.2
N170 G1 Y56
N180 M5 G40

(waterjet: name flexure slit right)
N200 G0 X124 Y56
N210 M3
N220 G41 D1 G1 X125.2
N230 Y70.8
N240 G3 X122.8 I-1.2
N250 G1 Y41.2
N260 G3 X125.2 I1.2
N270 G1 Y56
N280 M5 G40

(waterjet: name slot of the clamp)
N300 G0 X80 Y88
N310 M3
N320 G41 D1 G1 Y84
N330 X94
N340 G3 Y92 R4
N350 G1 X66
N360 G3 Y84 R4
N370 G1 X80
N380 M5 G40

(waterjet: name screw hole 1, quality coarse)
N400 G0 X16 Y16
N410 M3
N420 G41 D1 G1 X20.5
N430 G3 I-4.5
N440 M5 G40
(waterjet: name screw hole 2, quality coarse)
N450 G0 X144 Y16
N460 M3
N470 G41 D1 G1 X148.5
N480 G3 I-4.5
N490 M5 G40
(waterjet: name screw hole 3, quality coarse)
N500 G0 X144 Y84
N510 M3
N520 G41 D1 G1 X148.5
N530 G3 I-4.5
N540 M5 G40
(waterjet: name screw hole 4, quality coarse)
N550 G0 X16 Y84
N560 M3
N570 G41 D1 G1 X20.5
N580 G3 I-4.5
N590 M5 G40

(waterjet: name outline)
N700 G0 X80 Y106
N710 M3
N720 G41 D1 G1 Y100 ; lead-in
N730 X152
N740 G2 X160 Y92 I0 J-8
N750 G1 Y8
N760 G2 X152 Y0 I-8 J0
N770 G1 X104
N780 G2 X100 Y4 I0 J4
N790 G1 Y8
N800 G3 X94 Y14 I-6 J0 ; recess for the cable
N810 G1 X66
N820 G3 X60 Y8 I0 J-6
N830 G1 Y4
N840 G2 X56 Y0 I-4 J0
N850 G1 X8
N860 G2 X0 Y8 I0 J8
N870 G1 Y92
N880 G2 X8 Y100 I8 J0
N890 G1 X80
N900 Y104 ; lead-out
N910 M5 G40
N920 M30
%
