package tramontane.airflow.internal;

import java.util.Arrays;

/**
 * An order of elimination that keeps the factors of a sparse symmetric matrix sparse: the node with the fewest neighbours
 * goes first.
 *
 * <p>After P. R. Amestoy, T. A. Davis, I. S. Duff, "An approximate minimum degree ordering algorithm", SIAM J. Matrix Anal.
 * Appl. 17 (1996) 886-905: a quotient graph of nodes and elements, each element the neighbours that an eliminated node left
 * behind; a bound in place of the degree; nodes with the same neighbours merged into one that carries their number as its
 * weight; nodes that a pivot leaves with nothing but its own element eliminated together with it; elements absorbed as soon as
 * another one covers them.
 *
 * <p>Nodes with very many neighbours go last, as they do in the authors' code: they would be looked through again at each
 * elimination next to them. The order depends on the pattern only.
 */
final class MinimumDegree {

    private static final int NONE = -1;

    private final int n;
    /** The lists of all nodes and elements: of a node its elements and then its neighbours, of an element its nodes. */
    private int[] list;
    private final int[] start;
    private final int[] length;
    /** How many of the list of a node are elements; an element carries the number of the node it came from. */
    private final int[] elements;
    private int free;
    /** How many nodes a node stands for: zero if it is merged or eliminated, turned negative while it is in the new element. */
    private final int[] weight;
    /** Bound of the degree of a node, weight of an element. */
    private final int[] degree;
    private final int[] head;
    private final int[] next;
    private final int[] previous;
    private int lowest;
    /** Zero for what is no live element; otherwise, from {@link #stamp} on, stamp and weight outside the new element. */
    private final int[] outside;
    private int stamp;
    private final int[] mark;
    private int tag;
    /** Nodes that are eliminated along with each node, as a chain. */
    private final int[] follower;
    private final int[] lastFollower;
    private final int[] bucket;
    private final int[] inBucket;
    private final int[] hash;
    private int left;

    private MinimumDegree(Pattern pattern) {
        n = pattern.n();
        start = Arrays.copyOf(pattern.start(), n);
        length = new int[n];
        elements = new int[n];
        weight = new int[n];
        degree = new int[n];
        head = new int[n + 1];
        next = new int[n];
        previous = new int[n];
        outside = new int[n];
        mark = new int[n];
        follower = new int[n];
        lastFollower = new int[n];
        bucket = new int[n];
        inBucket = new int[n];
        hash = new int[n];
        free = pattern.neighbour().length;
        list = Arrays.copyOf(pattern.neighbour(), Math.addExact(free, Math.addExact(free / 5, n)));
        Arrays.fill(head, NONE);
        Arrays.fill(bucket, NONE);
        Arrays.fill(follower, NONE);
        stamp = 1;
        left = n;
        for (int i = 0; i < n; i++) {
            length[i] = pattern.start()[i + 1] - start[i];
            weight[i] = 1;
            lastFollower[i] = i;
        }
    }

    /** The order of elimination: node to be eliminated first, second … */
    static int[] order(Pattern pattern) {
        return new MinimumDegree(pattern).eliminate();
    }

    private int[] eliminate() {
        int[] order = new int[n];
        int ordered = 0;
        int last = n;
        // the limit of the authors' code
        double many = Math.max(16, 10 * Math.sqrt(n));
        for (int i = n - 1; i >= 0; i--) {
            if (length[i] > many) {
                weight[i] = 0;
                length[i] = 0;
                order[--last] = i;
                left--;
            }
        }
        for (int i = n - 1; i >= 0; i--) {
            if (weight[i] > 0) {
                leaveOutLast(i);
                insert(i, length[i]);
            }
        }
        lowest = 0;
        while (left > 0) {
            while (head[lowest] == NONE) {
                lowest++;
            }
            int pivot = head[lowest];
            eliminate(pivot);
            for (int i = pivot; i != NONE; i = follower[i]) {
                order[ordered++] = i;
            }
        }
        return order;
    }

    /** Takes the nodes that go last out of a list. */
    private void leaveOutLast(int i) {
        int kept = start[i];
        for (int p = start[i]; p < start[i] + length[i]; p++) {
            if (weight[list[p]] > 0) {
                list[kept++] = list[p];
            }
        }
        length[i] = kept - start[i];
    }

    private void eliminate(int pivot) {
        remove(pivot);
        left -= weight[pivot];
        int size = gather(pivot);
        int begin = start[pivot];
        int end = begin + length[pivot];
        measureElements(begin, end);
        size = updateNodes(pivot, begin, end, size);
        stamp += n + 1;
        if (stamp > Integer.MAX_VALUE - 2 * n - 4) {
            for (int i = 0; i < n; i++) {
                outside[i] = Math.min(outside[i], 1);
            }
            stamp = 1;
        }
        mergeAlike(begin, end);
        int kept = begin;
        for (int p = begin; p < end; p++) {
            int i = list[p];
            if (weight[i] != 0) {
                weight[i] = -weight[i];
                insert(i, Math.min(degree[i] + size - weight[i], left - weight[i]));
                lowest = Math.min(lowest, degree[i]);
                list[kept++] = i;
            }
        }
        length[pivot] = kept - begin;
        free = kept;
        degree[pivot] = size;
        outside[pivot] = size > 0 ? 1 : 0;
        weight[pivot] = 0;
    }

    /** Makes the element of a pivot: all its neighbours, directly or through elements, which it takes over. Gives its weight. */
    private int gather(int pivot) {
        long room = length[pivot] - elements[pivot];
        for (int p = start[pivot]; p < start[pivot] + elements[pivot]; p++) {
            room += length[list[p]];
        }
        if (room > list.length - free) {
            compact(room);
        }
        int from = start[pivot];
        int split = from + elements[pivot];
        int to = from + length[pivot];
        int begin = free;
        int size = 0;
        // keeps it out of its own element
        weight[pivot] = -weight[pivot];
        for (int p = from; p < split; p++) {
            int element = list[p];
            size += take(start[element], start[element] + length[element]);
            outside[element] = 0;
            length[element] = 0;
        }
        size += take(split, to);
        start[pivot] = begin;
        length[pivot] = free - begin;
        elements[pivot] = 0;
        return size;
    }

    private int take(int from, int to) {
        int size = 0;
        for (int p = from; p < to; p++) {
            int i = list[p];
            if (weight[i] > 0) {
                size += weight[i];
                weight[i] = -weight[i];
                list[free++] = i;
                remove(i);
            }
        }
        return size;
    }

    /** Finds how much of each element lies outside the new one. */
    private void measureElements(int begin, int end) {
        for (int q = begin; q < end; q++) {
            int i = list[q];
            for (int p = start[i]; p < start[i] + elements[i]; p++) {
                int element = list[p];
                if (outside[element] > stamp) {
                    outside[element] += weight[i];
                } else if (outside[element] != 0) {
                    outside[element] = stamp + 1 + degree[element] + weight[i];
                }
            }
        }
    }

    /** Brings lists and degrees of the nodes of a new element up to date; gives the weight of what is left of it. */
    private int updateNodes(int pivot, int begin, int end, int size) {
        int rest = size;
        for (int q = begin; q < end; q++) {
            int i = list[q];
            int kept = start[i];
            int split = start[i] + elements[i];
            long bound = 0;
            int sum = pivot;
            for (int p = start[i]; p < split; p++) {
                int element = list[p];
                int beyond = outside[element] - stamp - 1;
                if (outside[element] != 0 && beyond > 0) {
                    bound += beyond;
                    list[kept++] = element;
                    sum += element;
                } else {
                    // all its nodes lie in the new element, which says more
                    outside[element] = 0;
                    length[element] = 0;
                }
            }
            int kind = kept;
            for (int p = split; p < start[i] + length[i]; p++) {
                int other = list[p];
                if (weight[other] > 0) {
                    bound += weight[other];
                    list[kept++] = other;
                    sum += other;
                }
            }
            if (kept == start[i]) {
                left += weight[i];
                rest += weight[i];
                follow(i, pivot);
                continue;
            }
            // Its list lost the pivot or an element with the pivot in it, so there is room: the element goes in front.
            list[kept] = list[kind];
            list[kind] = list[start[i]];
            list[start[i]] = pivot;
            elements[i] = kind - start[i] + 1;
            length[i] = kept - start[i] + 1;
            degree[i] = (int) Math.min(degree[i], bound);
            int slot = (sum & Integer.MAX_VALUE) % n;
            hash[i] = slot;
            inBucket[i] = bucket[slot];
            bucket[slot] = i;
        }
        return rest;
    }

    /** Merges nodes of the new element that have the same neighbours. */
    private void mergeAlike(int begin, int end) {
        for (int q = begin; q < end; q++) {
            int first = list[q];
            if (weight[first] == 0 || bucket[hash[first]] == NONE) {
                continue;
            }
            int chain = bucket[hash[first]];
            bucket[hash[first]] = NONE;
            for (int i = chain; i != NONE && inBucket[i] != NONE; i = inBucket[i]) {
                tag++;
                for (int p = start[i] + 1; p < start[i] + length[i]; p++) {
                    mark[list[p]] = tag;
                }
                int before = i;
                for (int other = inBucket[i]; other != NONE; other = inBucket[other]) {
                    if (alike(i, other)) {
                        weight[i] += weight[other];
                        follow(other, i);
                        inBucket[before] = inBucket[other];
                    } else {
                        before = other;
                    }
                }
            }
        }
    }

    private boolean alike(int i, int other) {
        boolean alike = length[i] == length[other] && elements[i] == elements[other];
        for (int p = start[other] + 1; alike && p < start[other] + length[other]; p++) {
            alike = mark[list[p]] == tag;
        }
        return alike;
    }

    /** From now on a node is eliminated along with another. */
    private void follow(int node, int leader) {
        weight[node] = 0;
        length[node] = 0;
        elements[node] = 0;
        follower[lastFollower[leader]] = node;
        lastFollower[leader] = lastFollower[node];
    }

    /** Moves all lists together, with at least so much room behind them. */
    private void compact(long room) {
        long used = 0;
        for (int i = 0; i < n; i++) {
            used += length[i];
        }
        int[] packed = used + room <= list.length ? new int[list.length]
                : new int[Math.toIntExact(used + room + used / 5)];
        free = 0;
        for (int i = 0; i < n; i++) {
            System.arraycopy(list, start[i], packed, free, length[i]);
            start[i] = free;
            free += length[i];
        }
        list = packed;
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
