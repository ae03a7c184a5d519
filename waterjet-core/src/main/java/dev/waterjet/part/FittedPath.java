package dev.waterjet.part;

/**
 * Lines and arcs that replace a path, with the edges of it that each of them replaces.
 *
 * @param path the lines and arcs
 * @param firstEdge first edge of the replaced path, for each piece
 * @param lastEdge last edge of the replaced path; below the first where the piece goes over the start of a closed path
 * @param deviation largest distance of a point of the replaced path from each piece, in m
 * @param worstEdge edge of the replaced path at which that was found
 */
@SuppressWarnings("ArrayRecordComponent")
record FittedPath(EdgeArrays path, int[] firstEdge, int[] lastEdge, double[] deviation, int[] worstEdge) {

    /** The path itself, where it cannot be replaced. */
    static FittedPath unchanged(EdgeArrays path) {
        int[] edges = new int[path.size()];
        for (int i = 0; i < edges.length; i++) {
            edges[i] = i;
        }
        return new FittedPath(path, edges, edges, new double[edges.length], edges);
    }

    int size() {
        return firstEdge.length;
    }

    /** The piece with the largest deviation. */
    int worstPiece() {
        int worst = 0;
        for (int i = 1; i < deviation.length; i++) {
            worst = deviation[i] > deviation[worst] ? i : worst;
        }
        return worst;
    }
}
