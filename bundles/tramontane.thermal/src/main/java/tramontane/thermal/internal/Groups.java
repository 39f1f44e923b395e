package tramontane.thermal.internal;

import java.util.Arrays;

/**
 * Bays in the order in which air goes through them; those between which it goes round in groups of their own.
 *
 * <p>R. E. Tarjan, "Depth-first search and linear graph algorithms", SIAM J. Comput. 1 (1972) 146-160, without recursion.
 */
public final class Groups {

    private final int[] outStart;
    private final int[] out;
    private final int[] order;
    private final int[] place;
    private final int[] group;
    private final int[] start;
    private final int count;

    private Groups(int[] outStart, int[] out, int[] order, int[] place, int[] group, int[] start, int count) {
        this.outStart = outStart;
        this.out = out;
        this.order = order;
        this.place = place;
        this.group = group;
        this.start = start;
        this.count = count;
    }

    /**
     * Groups of bays.
     *
     * @param bays number of bays
     * @param up   where the air of each way comes from; below 0 for outside
     * @param down where it goes; below 0 for outside
     */
    public static Groups of(int bays, int[] up, int[] down) {
        int[] outStart = new int[bays + 1];
        for (int each : up) {
            if (each >= 0) {
                outStart[each + 1]++;
            }
        }
        for (int i = 0; i < bays; i++) {
            outStart[i + 1] += outStart[i];
        }
        int[] fill = outStart.clone();
        int[] out = new int[outStart[bays]];
        for (int e = 0; e < up.length; e++) {
            if (up[e] >= 0) {
                out[fill[up[e]]++] = e;
            }
        }
        return new Search(bays, outStart, out, down).run();
    }

    private static final class Search {
        private final int bays;
        private final int[] outStart;
        private final int[] out;
        private final int[] down;
        private final int[] number;
        private final int[] low;
        private final int[] stack;
        private final boolean[] stacked;
        private final int[] found;
        private final int[] sizes;
        private int numbered;
        private int height;
        private int listed;
        private int groups;

        Search(int bays, int[] outStart, int[] out, int[] down) {
            this.bays = bays;
            this.outStart = outStart;
            this.out = out;
            this.down = down;
            number = new int[bays];
            low = new int[bays];
            stack = new int[bays];
            stacked = new boolean[bays];
            found = new int[bays];
            sizes = new int[bays];
            Arrays.fill(number, -1);
        }

        Groups run() {
            int[] path = new int[bays];
            int[] next = new int[bays];
            for (int root = 0; root < bays; root++) {
                if (number[root] >= 0) {
                    continue;
                }
                int depth = 0;
                path[0] = root;
                enter(root, next);
                while (depth >= 0) {
                    int bay = path[depth];
                    if (next[bay] < outStart[bay + 1]) {
                        int other = down[out[next[bay]++]];
                        if (other >= 0 && number[other] < 0) {
                            path[++depth] = other;
                            enter(other, next);
                        } else if (other >= 0 && stacked[other]) {
                            low[bay] = Math.min(low[bay], number[other]);
                        }
                    } else {
                        if (low[bay] == number[bay]) {
                            leave(bay);
                        }
                        depth--;
                        if (depth >= 0) {
                            low[path[depth]] = Math.min(low[path[depth]], low[bay]);
                        }
                    }
                }
            }
            return ordered();
        }

        private void enter(int bay, int[] next) {
            number[bay] = numbered;
            low[bay] = numbered++;
            next[bay] = outStart[bay];
            stack[height++] = bay;
            stacked[bay] = true;
        }

        private void leave(int root) {
            int bay;
            do {
                bay = stack[--height];
                stacked[bay] = false;
                found[listed++] = bay;
                sizes[groups]++;
            } while (bay != root);
            groups++;
        }

        /** Groups come out last first. */
        private Groups ordered() {
            int[] order = new int[bays];
            int[] place = new int[bays];
            int[] group = new int[bays];
            int[] start = new int[groups + 1];
            int from = 0;
            int end = bays;
            for (int g = 0; g < groups; g++) {
                int mine = groups - 1 - g;
                end -= sizes[g];
                start[mine] = end;
                for (int k = 0; k < sizes[g]; k++) {
                    int bay = found[from + k];
                    order[end + k] = bay;
                    place[bay] = end + k;
                    group[bay] = mine;
                }
                from += sizes[g];
            }
            start[groups] = bays;
            return new Groups(outStart, out, order, place, group, start, groups);
        }
    }

    /** Number of groups. */
    public int count() {
        return count;
    }

    /** Where the members of a group begin; of the number behind the last, where they end. */
    public int start(int g) {
        return start[g];
    }

    /** The bay at a place of the order. */
    public int member(int at) {
        return order[at];
    }

    /** The place of a bay in the order. */
    public int placeOf(int bay) {
        return place[bay];
    }

    /** The group of a bay. */
    public int groupOf(int bay) {
        return group[bay];
    }

    /** Where the ways that leave a bay begin among all. */
    public int outStart(int bay) {
        return outStart[bay];
    }

    /** A way that leaves a bay. */
    public int out(int at) {
        return out[at];
    }
}
