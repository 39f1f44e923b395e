package tramontane.model;

import java.util.List;
import java.util.Optional;

/**
 * The flow network: bays joined by passages.
 *
 * @param bays     the bays, without {@code outside}
 * @param passages the passages, banks among them
 * @param more     layout, notes and unknown members
 */
public record AirPath(List<Bay> bays, List<Passage> passages, Value.Tree more) implements Noun {

    /** No bays, no passages. */
    public static final AirPath EMPTY = new AirPath(List.of(), List.of(), Value.Tree.EMPTY);

    /** The fields in the file. */
    public static final Form FORM = Form.of("air path", "The flow network: bays joined by passages.",
            Field.parts("bays", "bays", Bay.FORM, "id", "Volumes of air; outside is always there and not listed."),
            Field.parts("passages", "passages", Passage.FORM, "What air goes through between two bays."));

    public AirPath {
        bays = List.copyOf(bays);
        passages = List.copyOf(passages);
    }

    static AirPath from(Values values) {
        return new AirPath(values.parts("bays").stream().map(Bay::from).toList(),
                values.parts("passages").stream().map(Passage::from).toList(), values.rest());
    }

    /** The passage of that id. */
    public Optional<Passage> passage(String id) {
        return passages.stream().filter(passage -> passage.id().equals(id)).findFirst();
    }

    /** The passages that hold air movers. */
    public List<Passage> banks() {
        return passages.stream().filter(Passage::isBank).toList();
    }

    /** This air path with a passage put in the place of the one of the same id. */
    public AirPath withPassage(Passage changed) {
        return new AirPath(bays, passages.stream()
                .map(passage -> passage.id().equals(changed.id()) ? changed : passage).toList(), more);
    }

    @Override
    public Value.Tree tree() {
        return new TreeBuilder().items("bays", bays.stream().map(Bay::value).toList())
                .items("passages", passages.stream().map(Passage::tree).toList()).build(more);
    }
}
