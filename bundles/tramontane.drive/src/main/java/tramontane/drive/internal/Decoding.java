package tramontane.drive.internal;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import tramontane.analysis.SectionType;
import tramontane.analysis.Sections;
import tramontane.drive.BankDrive;
import tramontane.drive.LawDrive;
import tramontane.drive.MoverDrive;
import tramontane.drive.Supplies;
import tramontane.drive.SupplyLevels;
import tramontane.model.AirMover;
import tramontane.model.Condition;
import tramontane.model.ControlLaw;
import tramontane.model.Design;
import tramontane.model.Noun;
import tramontane.model.Passage;
import tramontane.model.Value;

/** Decodes sections, each once: a speed law is asked some hundred times for one operating point. */
public final class Decoding {

    private static final int MOST = 4096;
    private static final MoverDriveSection MOVER = new MoverDriveSection();
    private static final BankDriveSection BANK = new BankDriveSection();
    private static final LawDriveSection LAW = new LawDriveSection();
    private static final SuppliesSection SUPPLIES = new SuppliesSection();
    private static final SupplyLevelsSection LEVELS = new SupplyLevelsSection();

    private final Map<Key, Optional<?>> known = new ConcurrentHashMap<>();

    private record Key(SectionType<?> type, Value written) {
    }

    /** What a part says of its drive. */
    public Optional<MoverDrive> mover(AirMover mover) {
        return decode(MOVER, mover);
    }

    /** What a bank says of its drive. */
    public BankDrive bank(Passage bank) {
        return decode(BANK, bank).orElse(BankDrive.NONE);
    }

    /** Whether a bank says anything of its drive. */
    public boolean says(Passage bank) {
        return bank.section(MoverDriveSection.NAME).isPresent();
    }

    /** What a control law says of how it is carried out. */
    public LawDrive law(ControlLaw law) {
        return decode(LAW, law).orElse(LawDrive.NONE);
    }

    /** What a design says of its supplies. */
    public Supplies supplies(Design design) {
        return decode(SUPPLIES, design).orElse(Supplies.NONE);
    }

    /** What a condition says of single supplies. */
    public SupplyLevels levels(Condition condition) {
        return decode(LEVELS, condition).orElse(SupplyLevels.NONE);
    }

    private <T> Optional<T> decode(SectionType<T> type, Noun noun) {
        Optional<Value> written = noun.section(type.form().name());
        if (written.isEmpty()) {
            return Optional.empty();
        }
        Key key = new Key(type, written.get());
        Optional<?> found = known.get(key);
        if (found == null) {
            if (known.size() > MOST) {
                known.clear();
            }
            found = Sections.decode(type, noun);
            known.put(key, found);
        }
        @SuppressWarnings("unchecked") // put there for this very type
        Optional<T> decoded = (Optional<T>) found;
        return decoded;
    }

    /** The ids of banks in a list that may be empty for all. */
    static boolean drives(ControlLaw law, String bank) {
        List<String> banks = law.banks();
        return banks.isEmpty() || banks.contains(bank);
    }
}
