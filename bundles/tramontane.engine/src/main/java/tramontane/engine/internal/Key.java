package tramontane.engine.internal;

import java.util.List;
import java.util.Set;
import tramontane.model.Design;

/** What a result was computed from; its hash is taken once, since that walks through the whole design. */
final class Key {

    private final long analysis;
    private final String bundle;
    private final String id;
    private final Design read;
    private final List<Answer> used;
    private final List<Long> drawnOn;
    private final boolean brief;
    private final Set<String> wanted;
    private final int hash;

    /**
     * Makes a key.
     *
     * @param card    the analysis
     * @param read    the part of the design that it reads
     * @param used    the answers it uses
     * @param drawnOn service ids of what it finds for itself
     * @param brief   whether bounds, findings and tables may be missing
     * @param wanted  the figures that may not be missing; all where empty
     */
    Key(Card card, Design read, List<Answer> used, List<Long> drawnOn, boolean brief, Set<String> wanted) {
        this.analysis = card.extension().id();
        this.bundle = card.bundle();
        this.id = card.id();
        this.read = read;
        this.used = List.copyOf(used);
        this.drawnOn = drawnOn;
        this.brief = brief;
        this.wanted = wanted;
        this.hash = ((Long.hashCode(analysis) * 31 + read.hashCode()) * 31 + this.used.hashCode()) * 31 + drawnOn.hashCode();
    }

    long analysis() {
        return analysis;
    }

    @Override
    public boolean equals(Object other) {
        return this == other || other instanceof Key key && hash == key.hash && analysis == key.analysis
                && used.equals(key.used) && drawnOn.equals(key.drawnOn) && id.equals(key.id) && bundle.equals(key.bundle)
                && brief == key.brief && wanted.equals(key.wanted) && read.equals(key.read);
    }

    @Override
    public int hashCode() {
        return hash;
    }
}
