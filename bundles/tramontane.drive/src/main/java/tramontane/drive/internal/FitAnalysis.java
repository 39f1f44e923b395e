package tramontane.drive.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.osgi.service.component.annotations.Component;
import tramontane.analysis.Amount;
import tramontane.analysis.Analysis;
import tramontane.analysis.FigureKind;
import tramontane.analysis.Input;
import tramontane.analysis.Needs;
import tramontane.analysis.Overview;
import tramontane.analysis.Result;
import tramontane.analysis.Run;
import tramontane.analysis.Scope;
import tramontane.analysis.Table;
import tramontane.drive.BankDrive;
import tramontane.drive.DriveFit;
import tramontane.drive.MoverDrive;
import tramontane.drive.Signal;
import tramontane.drive.Supplies;
import tramontane.model.AirMover;
import tramontane.model.Design;
import tramontane.model.Passage;
import tramontane.model.Quantity;
import tramontane.physics.units.QuantityKind;

/** Whether the parts fit the supplies, and whether their wires carry what the design wants to control and watch. */
@Component(service = Analysis.class)
public final class FitAnalysis implements Analysis<DriveFit> {

    private final Decoding decoding = new Decoding();

    @Override
    public String id() {
        return "drive.fit";
    }

    @Override
    public String label() {
        return "supply and wires";
    }

    @Override
    public Scope scope() {
        return Scope.DESIGN;
    }

    @Override
    public Class<DriveFit> gives() {
        return DriveFit.class;
    }

    @Override
    public Needs needs() {
        return Needs.NOTHING;
    }

    @Override
    public List<FigureKind> figures() {
        return List.of();
    }

    @Override
    public Design reads(Design design) {
        return DriveAnalysis.reads(design, MoverDriveSection.NAME);
    }

    /** A bank, its part, what both say of the drive, and the lowest voltage that a condition states for it, V. */
    record Fitted(Passage bank, AirMover mover, Optional<MoverDrive> part, BankDrive drive, Optional<Supplies.Source> source,
            Optional<Double> stated) {

        /** As findings name it. */
        String who() {
            return "bank " + bank.id() + " (" + mover.id() + ")";
        }
    }

    /** The banks of which anything is said. */
    static List<Fitted> banks(Design design, Decoding decoding) {
        Supplies supplies = decoding.supplies(design);
        List<Fitted> banks = new ArrayList<>();
        for (Passage passage : design.airPath().passages()) {
            Optional<AirMover> mover = passage.isBank() ? design.airMover(Banks.mover(passage)) : Optional.empty();
            if (mover.isEmpty()) {
                continue;
            }
            Optional<MoverDrive> part = decoding.mover(mover.get());
            BankDrive drive = decoding.bank(passage);
            if (part.isPresent() || decoding.says(passage)) {
                banks.add(new Fitted(passage, mover.get(), part, drive, drive.supply().flatMap(supplies::source), stated(design, drive, decoding)));
            }
        }
        return banks;
    }

    private static Optional<Double> stated(Design design, BankDrive drive, Decoding decoding) {
        return design.conditions().stream().flatMap(condition -> drive.supply().flatMap(decoding.levels(condition)::of)
                .flatMap(level -> level.voltage())
                .or(() -> condition.supplyVoltage().map(Quantity::si)).stream()).filter(volts -> volts > 0).min(Double::compare);
    }

    @Override
    public Result<DriveFit> run(Input input, Run run) {
        List<Fitted> banks = banks(input.design(), decoding);
        List<DriveFit.Bank> fits = banks.stream().filter(bank -> bank.part().isPresent()).map(bank -> {
            MoverDrive part = bank.part().get();
            return new DriveFit.Bank(bank.bank().id(), Banks.control(part, bank.drive()), bank.drive().watch(), part.signal().kind(), part.wires());
        }).toList();
        Result<DriveFit> result = new Result<>(Optional.of(new DriveFit(fits)), List.of(), new FitFindings(input.design(), banks, decoding).all());
        return fits.isEmpty() ? result : result.with(new Overview(table(banks), List.of()));
    }

    private static Table table(List<Fitted> banks) {
        List<Table.Column> columns = List.of(new Table.Column("bank", false), new Table.Column("part", false), new Table.Column("supply", false),
                new Table.Column("takes", false), new Table.Column("rated voltage", true), new Table.Column("wires", true),
                        new Table.Column("control", false),
                new Table.Column("tells", false), new Table.Column("wanted", false));
        List<List<Table.Cell>> rows = new ArrayList<>();
        for (Fitted bank : banks) {
            if (bank.part().isPresent()) {
                MoverDrive part = bank.part().get();
                rows.add(List.of(new Table.Words(bank.bank().id()), new Table.Words(bank.mover().id()),
                        new Table.Words(bank.drive().supply().orElse("")), new Table.Words(part.supply().current().word()),
                        part.supply().voltage().<Table.Cell>map(volts -> new Amount(volts, QuantityKind.VOLTAGE)).orElse(new Table.Empty()),
                        part.wires().<Table.Cell>map(wires -> new Amount(wires, QuantityKind.COUNT)).orElse(new Table.Empty()),
                        new Table.Words(Banks.control(part, bank.drive()).word()), new Table.Words(part.signal().kind().word()),
                        new Table.Words(wanted(bank.drive()))));
            }
        }
        return new Table("Supply and wires", columns, rows);
    }

    private static String wanted(BankDrive drive) {
        List<String> all = new ArrayList<>();
        drive.control().ifPresent(control -> all.add("control by " + control.word()));
        if (drive.watch() != Signal.NONE) {
            all.add(drive.watch().word());
        }
        return String.join(", ", all);
    }
}
