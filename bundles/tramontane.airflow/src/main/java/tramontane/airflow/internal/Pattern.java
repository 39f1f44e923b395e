package tramontane.airflow.internal;

import java.util.Arrays;

/**
 * Which entries off the diagonal of a symmetric matrix are not zero: the neighbours of each node, each once.
 *
 * @param n         number of nodes
 * @param start     where the neighbours of each node begin, and where those of the last one end
 * @param neighbour the neighbours, node by node
 */
record Pattern(int n, int[] start, int[] neighbour) {

    /**
     * The pattern of pairs.
     *
     * @param n number of nodes
     * @param a first node of each pair
     * @param b second node of each pair; pairs may come more than once and either way round, a node is no neighbour of itself
     */
    static Pattern of(int n, int[] a, int[] b) {
        int[] end = new int[n + 1];
        for (int e = 0; e < a.length; e++) {
            end[a[e]]++;
            end[b[e]]++;
        }
        for (int i = 1; i <= n; i++) {
            end[i] = Math.addExact(end[i], end[i - 1]);
        }
        // each list is filled from its end, which leaves its start there
        int[] all = new int[end[n]];
        for (int e = a.length - 1; e >= 0; e--) {
            all[--end[a[e]]] = b[e];
            all[--end[b[e]]] = a[e];
        }
        int[] start = new int[n + 1];
        int[] seen = new int[n];
        Arrays.fill(seen, -1);
        int kept = 0;
        for (int i = 0; i < n; i++) {
            start[i] = kept;
            seen[i] = i;
            for (int p = end[i]; p < end[i + 1]; p++) {
                if (seen[all[p]] != i) {
                    seen[all[p]] = i;
                    all[kept++] = all[p];
                }
            }
        }
        start[n] = kept;
        return new Pattern(n, start, Arrays.copyOf(all, kept));
    }
}
