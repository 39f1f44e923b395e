package tramontane.selection.desktop.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import tramontane.analysis.Amount;
import tramontane.analysis.Finding;
import tramontane.analysis.Sentence;
import tramontane.analysis.Table;
import tramontane.catalogue.Catalogue;
import tramontane.catalogue.CatalogueField;
import tramontane.catalogue.Plausibility;
import tramontane.model.AirMover;
import tramontane.model.Datasheet;
import tramontane.model.MoverCurve;
import tramontane.physics.units.QuantityKind;

/** All that a part says, where it comes from, and whether it can be true. */
final class PartSheet {

    private static final Set<String> SAID_ABOVE = Set.of("id", "maker");

    private PartSheet() {
    }

    /**
     * The sheet of a part.
     *
     * @param catalogue where it is
     * @param part      its number
     */
    static Explanation of(Catalogue catalogue, int part) {
        AirMover mover = catalogue.part(part);
        List<Section> sections = new ArrayList<>();
        List<Finding> findings = Plausibility.of(mover);
        sections.add(Section.of("Plausibility", findings.isEmpty() ? List.of(Sentence.of("Its figures can be true together."))
                : findings.stream().map(finding -> Sentence.of(finding.severity().word() + ": ", finding.message(), finding.remedy().isEmpty() ? "" : "; ",
                finding.remedy(), finding.source().isEmpty() ? "" : " (" + finding.source() + ")")).toList()));
        List<String> sources = new ArrayList<>();
        List<List<Table.Cell>> rows = new ArrayList<>();
        for (CatalogueField field : catalogue.fields()) {
            Table.Cell cell = catalogue.cell(part, field);
            if (!(cell instanceof Table.Empty) && !SAID_ABOVE.contains(field.path())) {
                Optional<Datasheet.Origin> origin = field.isDerived() ? Optional.empty() : mover.datasheet().origin(field.path());
                rows.add(List.of(new Table.Words(field.label()), cell, new Table.Words(field.isDerived() ? "curves" : origin.map(each -> words(each, sources)).orElse("")),
                        origin.filter(each -> cell instanceof Amount).flatMap(Datasheet.Origin::tolerance).<Table.Cell>map(tolerance -> new Amount(tolerance.si(), QuantityKind.FRACTION))
                                .orElse(new Table.Empty())));
            }
        }
        List<Sentence> told = new ArrayList<>();
        for (int i = 0; i < sources.size(); i++) {
            told.add(Sentence.of("[" + (i + 1) + "] " + sources.get(i)));
        }
        sections.add(new Section("What it says", told, Optional.of(new Table("What it says", List.of(new Table.Column("what it is", false), new Table.Column("value", true),
                new Table.Column("from", false), new Table.Column("tolerance", true)), rows))));
        for (int i = 0; i < mover.curves().size(); i++) {
            sections.add(curve(mover.curves().get(i), mover.curves().size() == 1 ? "Curve" : "Curve " + (i + 1)));
        }
        String file = catalogue.file(part).toString();
        if (!file.isEmpty()) {
            sections.add(Section.of("Where it stands", List.of(Sentence.of(file))));
        }
        return new Explanation(mover.id() + (mover.maker().isEmpty() ? "" : ", " + mover.maker()), sections);
    }

    /** How a figure was come by, with the number of its source, each of which is told once. */
    private static String words(Datasheet.Origin origin, List<String> sources) {
        return origin.from().orElse("") + origin.source().map(source -> {
            if (!sources.contains(source)) {
                sources.add(source);
            }
            return " [" + (sources.indexOf(source) + 1) + "]";
        }).orElse("");
    }

    private static Section curve(MoverCurve curve, String name) {
        List<Object> at = new ArrayList<>(List.of("Measured at "));
        curve.speed().ifPresent(speed -> at.addAll(List.of(new Amount(speed.si(), QuantityKind.ROTATIONAL_SPEED), ", ")));
        curve.voltage().ifPresent(voltage -> at.addAll(List.of(new Amount(voltage.si(), QuantityKind.VOLTAGE), ", ")));
        curve.frequency().ifPresent(frequency -> at.addAll(List.of(new Amount(frequency.si(), QuantityKind.FREQUENCY), ", ")));
        at.addAll(List.of("in air of ", new Amount(curve.statedDensity(), QuantityKind.DENSITY), "."));
        double[] flow = curve.flow().toArray();
        double[] pressure = curve.pressure().toArray();
        Optional<double[]> power = curve.power().map(each -> each.toArray());
        List<Table.Column> columns = new ArrayList<>(List.of(new Table.Column("flow", true), new Table.Column("pressure", true)));
        power.ifPresent(each -> columns.add(new Table.Column("power", true)));
        List<List<Table.Cell>> rows = new ArrayList<>();
        for (int i = 0; i < Math.min(flow.length, pressure.length); i++) {
            List<Table.Cell> row = new ArrayList<>(List.of(new Amount(flow[i], QuantityKind.FLOW), new Amount(pressure[i], QuantityKind.PRESSURE)));
            int point = i;
            power.ifPresent(each -> row.add(point < each.length ? new Amount(each[point], QuantityKind.POWER) : new Table.Empty()));
            rows.add(row);
        }
        return Section.of(name, new Table(name, columns, rows), Sentence.of(at.toArray()));
    }
}
