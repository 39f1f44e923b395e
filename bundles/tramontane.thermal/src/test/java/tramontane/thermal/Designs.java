package tramontane.thermal;

import java.util.List;
import java.util.stream.Stream;
import tramontane.airflow.internal.AreaChangeKind;
import tramontane.airflow.internal.BankKind;
import tramontane.airflow.internal.BendKind;
import tramontane.airflow.internal.CardCageKind;
import tramontane.airflow.internal.DuctKind;
import tramontane.airflow.internal.FilterKind;
import tramontane.airflow.internal.FingerGuardKind;
import tramontane.airflow.internal.FlapKind;
import tramontane.airflow.internal.GapKind;
import tramontane.airflow.internal.GrilleKind;
import tramontane.airflow.internal.HeatSinkKind;
import tramontane.airflow.internal.MeasuredResistanceKind;
import tramontane.airflow.internal.OpeningKind;
import tramontane.airflow.internal.OrificeKind;
import tramontane.airflow.internal.ScreenKind;
import tramontane.airflow.internal.SupplySpeedLaw;
import tramontane.analysis.Cases;
import tramontane.analysis.LinkKind;
import tramontane.analysis.PassageKind;
import tramontane.analysis.SpeedLaw;
import tramontane.model.Condition;
import tramontane.model.Design;
import tramontane.model.Problem;
import tramontane.model.file.DesignFile;
import tramontane.model.file.Loaded;
import tramontane.thermal.internal.links.BoardKind;
import tramontane.thermal.internal.links.InterfaceKind;
import tramontane.thermal.internal.links.JunctionToCaseKind;
import tramontane.thermal.internal.links.MeasuredSinkKind;
import tramontane.thermal.internal.links.PackageKind;
import tramontane.thermal.internal.links.PinFinsKind;
import tramontane.thermal.internal.links.PlateFinsKind;
import tramontane.thermal.internal.links.ResistanceKind;
import tramontane.thermal.internal.links.SpreadingKind;
import tramontane.thermal.internal.links.SurfaceKind;

/** Small designs as files, and what solves them. */
public final class Designs {

    /** The passage kinds of the airflow bundle. */
    public static final List<PassageKind> PASSAGES = List.of(new OpeningKind(), new OrificeKind(), new GrilleKind(), new ScreenKind(),
            new FingerGuardKind(), new FilterKind(), new DuctKind(), new BendKind(), new AreaChangeKind(), new CardCageKind(),
            new HeatSinkKind(), new GapKind(), new FlapKind(), new MeasuredResistanceKind(), new BankKind());

    /** The link kinds of this bundle. */
    public static final List<LinkKind> LINKS = List.of(new JunctionToCaseKind(), new ResistanceKind(), new InterfaceKind(),
            new SpreadingKind(), new MeasuredSinkKind(), new PlateFinsKind(), new PinFinsKind(), new BoardKind(), new PackageKind(),
            new SurfaceKind());

    /** The speed laws of the airflow bundle. */
    public static final List<SpeedLaw> SPEEDS = List.of(new SupplySpeedLaw());

    private Designs() {
    }

    /** A design as a file, with single quotes for double ones. */
    public static Design design(String... json) {
        Loaded loaded = DesignFile.parse(String.join("\n", json).replace('\'', '"'));
        List<Problem> errors = loaded.problems().stream().filter(Problem::isError).toList();
        if (!errors.isEmpty()) {
            throw new AssertionError(errors.toString());
        }
        return loaded.design().orElseThrow();
    }

    /** The model of a design in the first case of its first condition. */
    public static ThermalModel model(Design design) {
        return model(design, 0);
    }

    /** The model of a design in one of its cases. */
    public static ThermalModel model(Design design, int number) {
        Condition condition = Cases.of(design, java.util.Set.of()).list().get(number).concrete();
        return ThermalModel.of(design, condition, PASSAGES, LINKS, SPEEDS);
    }

    /** The state in which a design settles. */
    public static ThermalState settled(Design design) {
        Loop loop = model(design).settle(() -> false);
        if (loop.state().isEmpty()) {
            throw new AssertionError(Stream.concat(loop.obstacles().stream().map(each -> each.message().toString()),
                    Stream.of(loop.cycle().size() + " states in a cycle")).toList().toString());
        }
        return loop.state().get();
    }
}
