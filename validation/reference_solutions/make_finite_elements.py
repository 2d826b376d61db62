#!/usr/bin/python3
"""Makes the finite-element reference solutions afresh: runs FreeFem++, makes the mesh study, writes the tables beside this script.

  make_finite_elements.py layered [folder]    layered_bore.edp -> layered_bores.csv
  make_finite_elements.py four [folder]       four_bores.edp, four_bores.py -> four_bores.csv
  make_finite_elements.py all [folder]        both (the folder is where the tables go; by default beside this script)

Nothing here comes from the engine. Layers and bores are invented. Units: m, s, W, K. Needs FreeFem++ 4.11, numpy, scipy.
"""

import pathlib
import sys

HERE = pathlib.Path(__file__).resolve().parent


def main():
    which = sys.argv[1] if len(sys.argv) > 1 else ""
    folder = pathlib.Path(sys.argv[2]) if len(sys.argv) > 2 else HERE
    if which not in ("layered", "four", "all"):
        sys.exit(__doc__)
    if which in ("layered", "all"):
        import layered_bores

        layered_bores.write(folder)
    if which in ("four", "all"):
        import four_bores

        four_bores.write(folder)


if __name__ == "__main__":
    main()
