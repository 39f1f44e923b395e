package tramontane.thermal.internal.time;

import java.util.List;
import tramontane.model.Bay;
import tramontane.model.ControlLaw;
import tramontane.model.Passage;
import tramontane.thermal.ThermalModel;
import tramontane.thermal.internal.Parts;

/**
 * Where a control law's sensor stands. It reads the same as in a steady state.
 *
 * @param kind   what it stands at
 * @param number of the part, bay or place
 * @param bank   whether the place is a bank, of which the air counts as it comes
 */
record Sensor(Kind kind, int number, boolean bank) {

    /** What it stands at. */
    enum Kind {
        PART, OUTSIDE, BAY, PASSAGE, NOTHING
    }

    static Sensor of(ControlLaw law, ThermalModel model) {
        List<Parts.Part> parts = model.parts().list();
        for (int k = 0; k < parts.size(); k++) {
            if (parts.get(k).source().id().equals(law.sensor())) {
                return new Sensor(Kind.PART, k, false);
            }
        }
        if (law.sensor().equals(Bay.OUTSIDE)) {
            return new Sensor(Kind.OUTSIDE, -1, false);
        }
        int bays = model.path().bays().size();
        for (int i = 0; i < bays; i++) {
            if (model.path().bays().get(i).id().equals(law.sensor())) {
                return new Sensor(Kind.BAY, i, false);
            }
        }
        List<Passage> passages = model.path().passages();
        for (int p = 0; p < passages.size(); p++) {
            if (passages.get(p).id().equals(law.sensor())) {
                return new Sensor(Kind.PASSAGE, bays + p, passages.get(p).isBank());
            }
        }
        return new Sensor(Kind.NOTHING, -1, false);
    }

    /** What it reads, K; NaN where that has no temperature. In a passage where air stands it is that of the bay before it. */
    double read(Network network, Network.Reading reading) {
        return switch (kind) {
            case PART -> reading.junction()[number];
            case OUTSIDE -> network.outside();
            case BAY -> reading.bay()[number];
            case PASSAGE -> {
                double capacity = network.air().passing().capacity()[number];
                yield network.outside() + network.air().arriving(number)
                        + (bank || !(capacity > 0) ? 0 : 0.5 * network.air().put(number) / capacity);
            }
            case NOTHING -> Double.NaN;
        };
    }
}
