package tramontane.airflow.internal;

import java.util.Arrays;

/**
 * How a sparse symmetric matrix is factorised front by front: which columns are eliminated together, which rows they reach,
 * and where everything is kept. Depends on the pattern only.
 *
 * <p>A front is a small dense lower triangle: the columns eliminated in it (its pivots), and the rows below that they reach
 * (its border). What it leaves to the rest of the matrix, a triangle over its border, is added up in its parent, the front in
 * which the first row of its border is a pivot: I. S. Duff, J. K. Reid, "The multifrontal solution of indefinite sparse
 * symmetric linear equations", ACM Trans. Math. Softw. 9 (1983) 302-325. Fronts are numbered so that the children of each are
 * the last ones before it that no other has taken yet; what they leave is therefore a stack.
 *
 * <p>Children are merged into their parent where working on some zeros costs less than working on two fronts: C. Ashcraft,
 * R. Grimes, "The influence of relaxed supernode partitions on the multifrontal method", ACM Trans. Math. Softw. 15 (1989)
 * 291-309.
 */
final class Fronts {

    private static final int NONE = -1;
    /**
     * What a front costs besides its arithmetic, in multiplications: for itself, and for each entry that it leaves to its
     * parent. Measured roughly; the optimum is flat.
     */
    private static final double PER_FRONT = 200;
    private static final double PER_ENTRY = 6;

    /** Number of fronts. */
    final int count;
    /** Place in the order of elimination → node. */
    final int[] order;
    /** First pivot of each front; one more, at which the last front ends. */
    final int[] first;
    /** Where the border of each front begins; one more. */
    final int[] borderStart;
    /** Rows of the borders, rising. */
    final int[] border;
    /** The places of the same rows in the parent: pivots from zero on, border after them. */
    final int[] inParent;
    /** First child of each front, and the next child of the same parent; -1 where there is none. */
    final int[] firstChild;
    final int[] nextChild;
    /** Where the pivot columns of each front begin; all rows are kept, one after another; one more. */
    final int[] columns;
    /** Where on the stack a front makes the triangle over its border, and where it leaves it. */
    final int[] made;
    final int[] left;
    /** Room that the stack takes. */
    final int stack;
    /** Entries of the factor below its diagonal that the pattern fills; fronts keep zeros besides. */
    final long fill;

    /** The fronts of a pattern. */
    static Fronts of(Pattern pattern) {
        return new Fronts(pattern, MinimumDegree.order(pattern));
    }

    private Fronts(Pattern pattern, int[] eliminated) {
        int n = pattern.n();
        int[] parent = new int[n];
        int[] below = new int[n];
        fill = tree(pattern, eliminated, parent, below);
        int[] post = postorder(parent, n);
        Groups groups = new Groups(post, parent, below);
        groups.merge();
        order = new int[n];
        int[] front = new int[n];
        first = groups.number(eliminated, order, front);
        count = first.length - 1;

        borderStart = new int[count + 1];
        firstChild = new int[count];
        nextChild = new int[count];
        border = borders(pattern, front);
        inParent = new int[border.length];
        columns = new int[count + 1];
        made = new int[count];
        left = new int[count];
        stack = layOut(front);
    }

    /**
     * The elimination tree and the number of entries below the diagonal in each column of the factor: T. A. Davis, "Algorithm
     * 849: a concise sparse Cholesky factorization package", ACM Trans. Math. Softw. 31 (2005) 587-591.
     *
     * @return the number of all these entries
     */
    private static long tree(Pattern pattern, int[] order, int[] parent, int[] below) {
        int n = pattern.n();
        int[] place = new int[n];
        for (int k = 0; k < n; k++) {
            place[order[k]] = k;
        }
        int[] seen = new int[n];
        long fill = 0;
        for (int k = 0; k < n; k++) {
            parent[k] = NONE;
            seen[k] = k;
            for (int p = pattern.start()[order[k]]; p < pattern.start()[order[k] + 1]; p++) {
                int i = place[pattern.neighbour()[p]];
                while (i < k && seen[i] != k) {
                    if (parent[i] == NONE) {
                        parent[i] = k;
                    }
                    seen[i] = k;
                    below[i]++;
                    fill++;
                    i = parent[i];
                }
            }
        }
        return fill;
    }

    /** An order of the nodes of a forest in which each follows directly on all of its descendants. */
    private static int[] postorder(int[] parent, int n) {
        int[] child = new int[n];
        int[] sibling = new int[n];
        Arrays.fill(child, NONE);
        for (int i = n - 1; i >= 0; i--) {
            if (parent[i] != NONE) {
                sibling[i] = child[parent[i]];
                child[parent[i]] = i;
            }
        }
        int[] post = new int[n];
        int[] path = new int[n];
        int done = 0;
        for (int root = 0; root < n; root++) {
            if (parent[root] != NONE) {
                continue;
            }
            int depth = 0;
            path[0] = root;
            while (depth >= 0) {
                int i = path[depth];
                if (child[i] == NONE) {
                    post[done++] = i;
                    depth--;
                } else {
                    path[++depth] = child[i];
                    child[i] = sibling[child[i]];
                }
            }
        }
        return post;
    }

    /** Columns to be eliminated together. */
    private static final class Groups {

        /** Columns in an order in which each group's are neighbours at first. */
        private final int[] post;
        private final int count;
        /** Number of pivots, and of rows with them. */
        private final int[] pivots;
        private final int[] rows;
        private final int[] parent;
        private final boolean[] merged;
        /** The columns of each group as a chain. */
        private final int[] head;
        private final int[] tail;
        private final int[] next;

        /** Chains of columns each of which has the pattern of the one before, but for that one. */
        Groups(int[] post, int[] parentColumn, int[] below) {
            this.post = post;
            int n = post.length;
            int[] group = new int[n];
            next = new int[n];
            int[] firsts = new int[n];
            int groups = 0;
            for (int k = 0; k < n; k++) {
                int i = post[k];
                next[i] = NONE;
                boolean goesOn = k > 0 && parentColumn[post[k - 1]] == i && below[post[k - 1]] == below[i] + 1;
                if (goesOn) {
                    next[post[k - 1]] = i;
                } else {
                    firsts[groups++] = k;
                }
                group[i] = groups - 1;
            }
            count = groups;
            pivots = new int[count];
            rows = new int[count];
            parent = new int[count];
            merged = new boolean[count];
            head = new int[count];
            tail = new int[count];
            for (int g = 0; g < count; g++) {
                int end = g + 1 < count ? firsts[g + 1] : n;
                head[g] = post[firsts[g]];
                tail[g] = post[end - 1];
                pivots[g] = end - firsts[g];
                rows[g] = below[head[g]] + 1;
                int up = parentColumn[tail[g]];
                parent[g] = up == NONE ? NONE : group[up];
            }
        }

        void merge() {
            int[] child = new int[count];
            int[] sibling = new int[count];
            Arrays.fill(child, NONE);
            for (int g = 0; g < count; g++) {
                // children come before their parents, so that they have merged with their own children by now
                int kept = NONE;
                int each = child[g];
                while (each != NONE) {
                    int after = sibling[each];
                    int more = pivots[each];
                    if (cost(pivots[g] + more, rows[g] + more) <= cost(pivots[g], rows[g]) + cost(more, rows[each])) {
                        merged[each] = true;
                        next[tail[each]] = head[g];
                        head[g] = head[each];
                        pivots[g] += more;
                        rows[g] += more;
                    } else {
                        sibling[each] = kept;
                        kept = each;
                    }
                    each = after;
                }
                if (parent[g] != NONE) {
                    sibling[g] = child[parent[g]];
                    child[parent[g]] = g;
                }
            }
        }

        private static double cost(double pivots, double rows) {
            double border = rows - pivots;
            return PER_FRONT + PER_ENTRY * border * (border + 1) / 2 + squares(rows) - squares(border);
        }

        /** 1 + 4 + 9 … + m². */
        private static double squares(double m) {
            return m * (m + 1) * (2 * m + 1) / 6;
        }

        /**
         * Numbers the groups that are left, and their columns.
         *
         * @param eliminated column → node
         * @param order      gets place → node
         * @param front      gets place → number of its group
         * @return first place of each group; one more
         */
        int[] number(int[] eliminated, int[] order, int[] front) {
            int[] up = new int[count];
            for (int g = count - 1; g >= 0; g--) {
                int above = parent[g];
                while (above != NONE && merged[above]) {
                    above = parent[above];
                }
                up[g] = above;
            }
            int[] first = new int[count + 1];
            int fronts = 0;
            int place = 0;
            for (int g : postorder(up, count)) {
                if (merged[g]) {
                    continue;
                }
                first[fronts] = place;
                for (int i = head[g]; i != NONE; i = next[i]) {
                    order[place] = eliminated[i];
                    front[place++] = fronts;
                }
                fronts++;
            }
            first[fronts] = place;
            return Arrays.copyOf(first, fronts + 1);
        }
    }

    /** The rows of all borders; sets where each begins, and the children. */
    private int[] borders(Pattern pattern, int[] front) {
        int n = pattern.n();
        int[] place = new int[n];
        for (int k = 0; k < n; k++) {
            place[order[k]] = k;
        }
        int[] seen = new int[n];
        Arrays.fill(seen, NONE);
        Arrays.fill(firstChild, NONE);
        int[] lastChild = new int[count];
        int[] rows = new int[2 * n];
        int used = 0;
        for (int s = 0; s < count; s++) {
            borderStart[s] = used;
            int end = first[s + 1];
            if (rows.length - used < n) {
                rows = Arrays.copyOf(rows, Math.addExact(rows.length, Math.max(n, rows.length / 2)));
            }
            for (int k = first[s]; k < end; k++) {
                for (int p = pattern.start()[order[k]]; p < pattern.start()[order[k] + 1]; p++) {
                    int row = place[pattern.neighbour()[p]];
                    if (row >= end && seen[row] != s) {
                        seen[row] = s;
                        rows[used++] = row;
                    }
                }
            }
            for (int c = firstChild[s]; c != NONE; c = nextChild[c]) {
                for (int p = borderStart[c]; p < borderStart[c + 1]; p++) {
                    int row = rows[p];
                    if (row >= end && seen[row] != s) {
                        seen[row] = s;
                        rows[used++] = row;
                    }
                }
            }
            Arrays.sort(rows, borderStart[s], used);
            borderStart[s + 1] = used;
            nextChild[s] = NONE;
            if (used > borderStart[s]) {
                int parent = front[rows[borderStart[s]]];
                if (firstChild[parent] == NONE) {
                    firstChild[parent] = s;
                } else {
                    nextChild[lastChild[parent]] = s;
                }
                lastChild[parent] = s;
            }
        }
        return Arrays.copyOf(rows, used);
    }

    /** Sets the places of rows in parents, and those of columns and triangles; gives the room that the stack takes. */
    private int layOut(int[] front) {
        int[] local = new int[order.length];
        int top = 0;
        int most = 0;
        for (int s = 0; s < count; s++) {
            int pivots = first[s + 1] - first[s];
            int rows = borderStart[s + 1] - borderStart[s];
            columns[s + 1] = Math.toIntExact(columns[s] + (long) pivots * (pivots + rows));
            for (int k = 0; k < pivots; k++) {
                local[first[s] + k] = k;
            }
            for (int k = 0; k < rows; k++) {
                local[border[borderStart[s] + k]] = pivots + k;
            }
            for (int c = firstChild[s]; c != NONE; c = nextChild[c]) {
                for (int p = borderStart[c]; p < borderStart[c + 1]; p++) {
                    inParent[p] = local[border[p]];
                }
            }
            made[s] = top;
            left[s] = firstChild[s] == NONE ? top : left[firstChild[s]];
            int size = Math.multiplyExact(rows, rows + 1) / 2;
            most = Math.max(most, Math.addExact(top, size));
            top = left[s] + size;
        }
        return most;
    }
}
