package tramontane.thermal.internal.links;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tramontane.analysis.AirStream;
import tramontane.analysis.LinkKind;
import tramontane.analysis.PassageKind;
import tramontane.analysis.Trace;
import tramontane.model.AirPath;
import tramontane.model.Bay;
import tramontane.model.Condition;
import tramontane.model.Design;
import tramontane.model.FormReader;
import tramontane.model.HeatSource;
import tramontane.model.Link;
import tramontane.model.Passage;
import tramontane.model.Problem;
import tramontane.model.Quantity;
import tramontane.model.Value;
import tramontane.model.Values;

/** Links of a heat source cpu that stands in a bay box, on a passage sink or on a passage cage; read as from a file. */
final class Links {

    static final List<LinkKind> KINDS = List.of(new JunctionToCaseKind(), new InterfaceKind(), new SpreadingKind(),
            new MeasuredSinkKind(), new PlateFinsKind(), new PinFinsKind(), new BoardKind(), new PackageKind(), new ResistanceKind(),
            new SurfaceKind());

    /** The place of every link in sentences. */
    static final String AT = "heatSources[0].chain[1]";

    private static final Value.Tree SINK = tree("fins", 16, "finThickness", "0.8 mm", "width", "60 mm", "height", "25 mm", "length",
            "60 mm", "continues", true);
    private static final Value.Tree CAGE = tree("boards", 10, "pitch", "20 mm", "componentHeight", "5 mm", "height", "160 mm",
            "length", "220 mm");

    private Links() {
    }

    /** A tree of texts, numbers and lists: {@code tree("area", "10 cm²", "across", 2)}. */
    static Value.Tree tree(Object... members) {
        Value.Tree tree = Value.Tree.EMPTY;
        for (int i = 0; i < members.length; i += 2) {
            tree = tree.with((String) members[i], value(members[i + 1]));
        }
        return tree;
    }

    private static Value value(Object member) {
        return switch (member) {
            case Number number -> Value.Num.of(number.doubleValue());
            case Boolean on -> new Value.Flag(on);
            case List<?> list -> new Value.Items(list.stream().map(Links::value).toList());
            default -> new Value.Text(member.toString());
        };
    }

    /** One link as a test sees it. */
    record Case(LinkKind kind, LinkKind.Setting setting, Values values, List<Problem> problems) {

        /** K/W. */
        double resistance(AirStream air, double beyond) {
            if (!problems.isEmpty()) {
                throw new AssertionError(problems.toString());
            }
            return kind.law(values, setting).resistance(air, beyond);
        }

        double resistance(AirStream air) {
            return resistance(air, 0);
        }

        boolean fromInlet() {
            return kind.fromInlet(values, setting);
        }

        List<String> findings(AirStream air) {
            return kind.findings(values, setting, air).stream()
                    .map(finding -> finding.severity().word() + " " + finding.place() + ": " + finding.message()).toList();
        }

        PassageKind.Origin origin(AirStream air) {
            return kind.origin(values, setting, air).orElseThrow();
        }

        /** The value of an input that a trace names. */
        double input(AirStream air, String name) {
            return origin(air).inputs().stream().filter(term -> term.name().equals(name)).mapToDouble(Trace.Term::value)
                    .findFirst().orElseThrow(() -> new AssertionError(origin(air).inputs().toString()));
        }

        /** Everything that is said against its parameters, without the place of the link. */
        List<String> sentences() {
            return problems.stream().map(Problem::sentence)
                    .map(sentence -> sentence.startsWith(AT + ".") ? sentence.substring(AT.length() + 1)
                            : sentence.startsWith(AT + ": ") ? sentence.substring(AT.length() + 2) : sentence).toList();
        }
    }

    static Case inBox(LinkKind kind, Object... members) {
        return at("box", Condition.NOMINAL, kind, members);
    }

    static Case onSink(LinkKind kind, Object... members) {
        return at("sink", Condition.NOMINAL, kind, members);
    }

    static Case inCage(LinkKind kind, Object... members) {
        return at("cage", Condition.NOMINAL, kind, members);
    }

    static Case at(String place, Condition condition, LinkKind kind, Object... members) {
        Link link = new Link(kind.form().name(), Optional.empty(), Optional.empty(), tree(members));
        HeatSource source = new HeatSource("cpu", Quantity.of(25), Optional.empty(),
                List.of(new HeatSource.Share(place, Optional.empty())), Optional.empty(), Optional.empty(), List.of(link),
                Optional.empty(), Value.Tree.EMPTY);
        Design design = Design.EMPTY.withAirPath(new AirPath(List.of(Bay.of("box")),
                List.of(new Passage("sink", "heat sink", "box", Bay.OUTSIDE, SINK),
                        new Passage("cage", "card cage", "box", Bay.OUTSIDE, CAGE)), Value.Tree.EMPTY))
                .withHeatSources(List.of(source));
        LinkKind.Setting setting = new LinkKind.Setting(design, condition, source, link);
        List<Problem> problems = new ArrayList<>();
        Values values = FormReader.read(kind.form(), link.parameters(), AT, problems);
        problems.addAll(kind.check(values, setting, AT));
        return new Case(kind, setting, values, problems);
    }

    /** A condition at a barometric pressure, Pa. */
    static Condition pressure(double pascal) {
        return new Condition("high up", Optional.empty(), Optional.empty(), Optional.of(Quantity.of(pascal)), Optional.empty(),
                Optional.empty(), Map.of(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), List.of(),
                Value.Tree.EMPTY);
    }

    /** Air of 1.1614 kg/m³, 1.846e-5 Pa s, 0.0263 W/(m K), 1007 J/(kg K): about 300 K (Incropera, DeWitt, table A.4). */
    static AirStream air(double flow, double area) {
        return new AirStream(flow, area, 1.1614, 1.846e-5, 0.0263, 1007);
    }

    /** That air where no cross-section is known. */
    static AirStream air(double flow) {
        return air(flow, Double.NaN);
    }
}
