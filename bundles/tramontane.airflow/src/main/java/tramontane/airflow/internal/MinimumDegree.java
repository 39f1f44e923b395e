package tramontane.airflow.internal;

import java.util.Arrays;

/**
 * An order of elimination that keeps the factors of a sparse symmetric matrix sparse: the node with the fewest neighbours
 * goes first.
 *
 * <p>Works on a quotient graph with element absorption and the degree bound of P. R. Amestoy, T. A. Davis, I. S. Duff, "An
 * approximate minimum degree ordering algorithm", SIAM J. Matrix Anal. Appl. 17 (1996) 886-905, without the merging of
 * indistinguishable nodes. Ties go to the node that got its degree last; the order depends on the pattern only.
 */
final class MinimumDegree {

    private static final int NONE = -1;

    private final int n;
    /** Neighbours of each node that no element covers. */
    private final int[][] nodes;
    private final int[] nodeCount;
    /** Elements that each node lies in; an element carries the number of the node it came from. */
    private final int[][] elements;
    private final int[] elementCount;
    /** Nodes of each element. */
    private final int[][] members;
    private final boolean[] live;
    private final int[] degree;
    private final int[] head;
    private final int[] next;
    private final int[] previous;
    private final int[] mark;
    /** How many nodes an element has outside the new one; holds where touched says so. */
    private final int[] outside;
    private final int[] touched;
    private int tag;

    private MinimumDegree(int n, int[] a, int[] b) {
        this.n = n;
        nodes = neighbours(n, a, b);
        nodeCount = new int[n];
        elements = new int[n][];
        elementCount = new int[n];
        members = new int[n][];
        live = new boolean[n];
        degree = new int[n];
        head = new int[n + 1];
        next = new int[n];
        previous = new int[n];
        mark = new int[n];
        outside = new int[n];
        touched = new int[n];
        Arrays.fill(head, NONE);
        Arrays.fill(mark, NONE);
        for (int i = n - 1; i >= 0; i--) {
            nodeCount[i] = nodes[i].length;
            elements[i] = new int[4];
            insert(i, nodeCount[i]);
        }
    }

    /**
     * The order of elimination.
     *
     * @param n number of nodes
     * @param a first node of each edge
     * @param b second node of each edge; pairs may come more than once
     * @return node to be eliminated first, second …
     */
    static int[] order(int n, int[] a, int[] b) {
        return new MinimumDegree(n, a, b).eliminate();
    }

    private static int[][] neighbours(int n, int[] a, int[] b) {
        int[] count = new int[n];
        for (int e = 0; e < a.length; e++) {
            count[a[e]]++;
            count[b[e]]++;
        }
        int[][] lists = new int[n][];
        for (int i = 0; i < n; i++) {
            lists[i] = new int[count[i]];
        }
        Arrays.fill(count, 0);
        for (int e = 0; e < a.length; e++) {
            if (a[e] != b[e]) {
                lists[a[e]][count[a[e]]++] = b[e];
                lists[b[e]][count[b[e]]++] = a[e];
            }
        }
        for (int i = 0; i < n; i++) {
            Arrays.sort(lists[i], 0, count[i]);
            int kept = 0;
            for (int k = 0; k < count[i]; k++) {
                if (k == 0 || lists[i][k] != lists[i][k - 1]) {
                    lists[i][kept++] = lists[i][k];
                }
            }
            lists[i] = Arrays.copyOf(lists[i], kept);
        }
        return lists;
    }

    private int[] eliminate() {
        int[] order = new int[n];
        int lowest = 0;
        for (int k = 0; k < n; k++) {
            while (head[lowest] == NONE) {
                lowest++;
            }
            int pivot = head[lowest];
            remove(pivot);
            order[k] = pivot;
            int[] front = front(pivot);
            lowest = Math.min(lowest, update(pivot, front, n - k - 1));
        }
        return order;
    }

    /** Makes the element of a pivot: all its neighbours, directly or through elements, which it takes over. */
    private int[] front(int pivot) {
        int stamp = ++tag;
        mark[pivot] = stamp;
        int size = nodeCount[pivot];
        for (int k = 0; k < elementCount[pivot]; k++) {
            size += members[elements[pivot][k]].length;
        }
        int[] front = new int[size];
        int count = 0;
        for (int k = 0; k < nodeCount[pivot]; k++) {
            int i = nodes[pivot][k];
            mark[i] = stamp;
            front[count++] = i;
        }
        for (int k = 0; k < elementCount[pivot]; k++) {
            int element = elements[pivot][k];
            for (int i : members[element]) {
                if (mark[i] != stamp) {
                    mark[i] = stamp;
                    front[count++] = i;
                }
            }
            live[element] = false;
            members[element] = null;
        }
        nodes[pivot] = null;
        elements[pivot] = null;
        front = count == size ? front : Arrays.copyOf(front, count);
        members[pivot] = front;
        live[pivot] = count > 0;
        return front;
    }

    /** Brings lists and degrees of the nodes of a new element up to date; returns the lowest new degree. */
    private int update(int pivot, int[] front, int left) {
        int stamp = tag;
        for (int i : front) {
            for (int k = 0; k < elementCount[i]; k++) {
                int element = elements[i][k];
                if (live[element]) {
                    outside[element] = (touched[element] == stamp ? outside[element] : members[element].length) - 1;
                    touched[element] = stamp;
                }
            }
        }
        int lowest = n;
        for (int i : front) {
            remove(i);
            int kept = 0;
            for (int k = 0; k < nodeCount[i]; k++) {
                if (mark[nodes[i][k]] != stamp) {
                    nodes[i][kept++] = nodes[i][k];
                }
            }
            nodeCount[i] = kept;
            long bound = kept + front.length - 1L;
            kept = 0;
            for (int k = 0; k < elementCount[i]; k++) {
                int element = elements[i][k];
                if (live[element] && outside[element] > 0) {
                    elements[i][kept++] = element;
                    bound += outside[element];
                } else if (live[element]) {
                    // all its nodes lie in the new element, which says more
                    live[element] = false;
                    members[element] = null;
                }
            }
            if (kept == elements[i].length) {
                elements[i] = Arrays.copyOf(elements[i], 2 * kept);
            }
            elements[i][kept++] = pivot;
            elementCount[i] = kept;
            int grown = degree[i] + front.length - 1;
            insert(i, (int) Math.min(Math.min(bound, grown), left - 1L));
            lowest = Math.min(lowest, degree[i]);
        }
        return lowest;
    }

    private void insert(int i, int to) {
        degree[i] = to;
        next[i] = head[to];
        previous[i] = NONE;
        if (head[to] != NONE) {
            previous[head[to]] = i;
        }
        head[to] = i;
    }

    private void remove(int i) {
        if (previous[i] == NONE) {
            head[degree[i]] = next[i];
        } else {
            next[previous[i]] = next[i];
        }
        if (next[i] != NONE) {
            previous[next[i]] = previous[i];
        }
    }
}
