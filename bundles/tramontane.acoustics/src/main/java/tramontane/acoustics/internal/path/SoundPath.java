package tramontane.acoustics.internal.path;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.stream.IntStream;
import tramontane.analysis.Finding;
import tramontane.analysis.PassageKind;
import tramontane.model.Condition;
import tramontane.model.Design;
import tramontane.physics.sound.Bands;
import tramontane.physics.sound.Levels;

/**
 * How much of the sound power of each bank leaves by each opening of the box.
 *
 * <p>The sound in each bay is taken to be diffuse, so that it meets lining and passages by their areas (statistical energy in rooms
 * that are coupled by openings; Kuttruff, Room Acoustics, and Cremer and Müller, Principles and Applications of Room Acoustics, from
 * memory). What meets a passage is gone from its bay; of that, 10^(−IL/10) comes out at the other end, the rest is taken up within.
 * Nothing comes in from outside. Without lining and insertion losses all power leaves, split at each bay as the areas are, which is the
 * rule for branches of ducts (VDI 2081; ASHRAE Handbook, HVAC Applications, noise and vibration control).
 *
 * <p>A bank gives half of its sound power to either side; a side that is outside radiates from the bank itself. Sound in a bay, whose
 * ever it is, also crosses a bank by its open area, and loses there what the bank states as its insertion loss. Every share falls, or
 * stays, where any lining or any insertion loss rises.
 */
public final class SoundPath {

    private static final double HALF = 0.5;

    private final List<Way> banks;
    private final List<Opening> openings;
    private final double[][][] shares;
    private final List<Finding> findings;

    private SoundPath(List<Way> banks, List<Opening> openings, double[][][] shares, List<Finding> findings) {
        this.banks = banks;
        this.openings = List.copyOf(openings);
        this.shares = shares;
        this.findings = List.copyOf(findings);
    }

    /**
     * Follows the sound through a design.
     *
     * @param design    the design
     * @param condition in which passages are asked for their areas
     * @param kinds     the kinds of passage that are loaded; of one that is missing the area is assumed
     */
    public static SoundPath of(Design design, Condition condition, Collection<? extends PassageKind> kinds) {
        Ways read = Ways.of(design, condition, kinds);
        List<Way> ways = read.ways();
        List<Way> banks = ways.stream().filter(Way::bank).toList();
        List<Way> out = ways.stream().filter(Way::opening).toList();
        List<Finding> findings = new ArrayList<>(read.findings());
        int[] part = parts(read.bays().size(), ways);
        boolean[] open = new boolean[read.bays().size()];
        for (int bay = 0; bay < open.length; bay++) {
            int own = part[bay];
            open[bay] = ways.stream().anyMatch(way -> way.outer() && way.inner() != Way.OUTSIDE && part[way.inner()] == own);
        }
        dead(banks, ways, part, open, findings);
        double[][][] shares = shares(read, banks, out, open, 0);
        double[][][] more = ways.stream().anyMatch(way -> way.noise().insertionLoss().isPresent() && way.noise().tolerance() > 0)
                ? shares(read, banks, out, open, 1) : shares;
        List<Opening> openings = new ArrayList<>();
        for (int o = 0; o < out.size(); o++) {
            Way way = out.get(o);
            openings.add(new Opening(way.id(), way.noise().face(), way.area(), way.assumed(), way.noise().directed(),
                    tolerance(shares, more, o)));
        }
        return new SoundPath(banks, openings, shares, findings);
    }

    /** For each bay the part of the box that it belongs to: bays that sound gets between without going outside. */
    private static int[] parts(int bays, List<Way> ways) {
        int[] part = new int[bays];
        Arrays.setAll(part, i -> i);
        for (Way way : ways) {
            if (!way.outer()) {
                part[root(part, way.from())] = root(part, way.to());
            }
        }
        for (int i = 0; i < part.length; i++) {
            part[i] = root(part, i);
        }
        return part;
    }

    private static int root(int[] part, int bay) {
        int at = bay;
        while (part[at] != at) {
            part[at] = part[part[at]];
            at = part[at];
        }
        return at;
    }

    private static void dead(List<Way> banks, List<Way> ways, int[] part, boolean[] open, List<Finding> findings) {
        for (Way bank : banks) {
            if (bank.inner() != Way.OUTSIDE && !open[bank.inner()]) {
                findings.add(Finding.caution(bank.id(), "the sound of bank " + bank.id() + " has no way outside: nothing joins bay "
                        + bank.passage().from() + (bank.crossed() ? " or bay " + bank.passage().to() : "")
                        + " to outside, and none of its sound is counted").remedy("join one of its bays to outside by a passage"));
            }
        }
        for (Way way : ways) {
            if (!way.bank() && way.noise().insertionLoss().isPresent()
                    && banks.stream().noneMatch(bank -> bank.inner() != Way.OUTSIDE && part[bank.inner()] == part[way.inner()])) {
                findings.add(Finding.note(way.id(), "passage " + way.id() + " states an insertion loss, but no sound crosses it: no"
                        + " bank is joined to its bays"));
            }
        }
    }

    /**
     * Shares by bank, opening and third.
     *
     * @param open which bays have a way outside
     * @param less as of {@link Way#passed}
     */
    private static double[][][] shares(Ways read, List<Way> banks, List<Way> out, boolean[] open, double less) {
        List<Way> ways = read.ways();
        double[][] passed = new double[ways.size()][];
        for (int p = 0; p < passed.length; p++) {
            passed[p] = ways.get(p).passed(less);
        }
        int[] places = IntStream.range(0, ways.size()).filter(p -> ways.get(p).opening()).toArray();
        boolean fewer = out.stream().mapToInt(Way::inner).distinct().count()
                < banks.stream().flatMapToInt(bank -> IntStream.of(bank.from(), bank.to())).distinct().count();
        double[][][] shares = new double[banks.size()][out.size()][Bands.THIRDS];
        for (int third = 0; third < Bands.THIRDS; third++) {
            int like = first(passed, read.lining(), third);
            if (like < third) {
                for (double[][] bank : shares) {
                    for (double[] opening : bank) {
                        opening[third] = opening[like];
                    }
                }
                continue;
            }
            EnergyBalance balance = EnergyBalance.factor(matrix(read, passed, open, third));
            double[][] fields = new double[open.length][];
            for (int b = 0; b < banks.size(); b++) {
                for (int side : new int[] {banks.get(b).from(), banks.get(b).to()}) {
                    for (int o = 0; o < places.length; o++) {
                        Way way = out.get(o);
                        if (side == Way.OUTSIDE) {
                            shares[b][o][third] += way == banks.get(b) ? HALF : 0;
                        } else if (open[side] && way.inner() != Way.OUTSIDE) {
                            // either may be taken for the source: what one gets of the other is the same both ways
                            int source = fewer ? way.inner() : side;
                            if (fields[source] == null) {
                                fields[source] = balance.solve(source);
                            }
                            double more = HALF * way.area() * passed[places[o]][third] * fields[source][fewer ? side : way.inner()];
                            shares[b][o][third] = Math.min(1, shares[b][o][third] + more); // rounding may have it above
                        }
                    }
                }
            }
        }
        return shares;
    }

    /** The first third in which all is as in this one. */
    private static int first(double[][] passed, double[][] lining, int third) {
        for (int other = 0; other < third; other++) {
            if (alike(passed, other, third) && alike(lining, other, third)) {
                return other;
            }
        }
        return third;
    }

    private static boolean alike(double[][] rows, int one, int other) {
        for (double[] row : rows) {
            if (row[one] != row[other]) {
                return false;
            }
        }
        return true;
    }

    private static double[][] matrix(Ways read, double[][] passed, boolean[] open, int third) {
        double[][] matrix = new double[open.length][];
        for (int bay = 0; bay < open.length; bay++) {
            matrix[bay] = new double[bay + 1];
            matrix[bay][bay] = open[bay] ? read.lining()[bay][third] : 1; // what has no way outside is left out
        }
        for (int p = 0; p < passed.length; p++) {
            Way way = read.ways().get(p);
            if (!way.crossed() || way.inner() != Way.OUTSIDE && !open[way.inner()]) {
                continue;
            }
            for (int end : new int[] {way.from(), way.to()}) {
                if (end != Way.OUTSIDE) {
                    matrix[end][end] += way.area();
                }
            }
            if (way.from() != Way.OUTSIDE && way.to() != Way.OUTSIDE) {
                matrix[Math.max(way.from(), way.to())][Math.min(way.from(), way.to())] -= way.area() * passed[p][third];
            }
        }
        return matrix;
    }

    private static double tolerance(double[][][] shares, double[][][] more, int opening) {
        double most = 0;
        for (int b = 0; shares != more && b < shares.length; b++) {
            for (int third = 0; third < Bands.THIRDS; third++) {
                double share = shares[b][opening][third];
                most = share > 0 ? Math.max(most, Levels.of(more[b][opening][third] / share)) : most;
            }
        }
        return most;
    }

    /** What sound leaves by, in the order of the passages. */
    public List<Opening> openings() {
        return openings;
    }

    /** The banks, in the order of the passages. */
    public List<String> banks() {
        return banks.stream().map(Way::id).toList();
    }

    /**
     * The part of a bank's sound power that leaves by an opening.
     *
     * @param bank    its id
     * @param opening one of {@link #openings}
     * @return in each third, 0 to 1; a copy
     */
    public double[] share(String bank, Opening opening) {
        int b = banks().indexOf(bank);
        int o = openings.indexOf(opening);
        if (b < 0 || o < 0) {
            throw new IllegalArgumentException("no bank " + bank + " or no opening " + opening.id() + " in this design");
        }
        return shares[b][o].clone();
    }

    /** What was assumed, and what of the design does nothing. */
    public List<Finding> findings() {
        return findings;
    }
}
