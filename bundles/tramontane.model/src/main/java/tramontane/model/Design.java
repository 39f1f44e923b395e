package tramontane.model;

import java.util.List;
import java.util.Optional;

/**
 * What one file holds, and the root of the model.
 *
 * @param name         title of the design
 * @param equipment    what is to be cooled, as a whole
 * @param airMovers    the parts that its banks use
 * @param airPath      bays and passages
 * @param heatSources  what gives off heat
 * @param conditions   operating cases; {@link Condition#NOMINAL} holds where there is none
 * @param mission      hours per condition and year
 * @param controlLaws  speed settings against temperatures
 * @param requirements limits on figures
 * @param more         sections, notes, layout and unknown members
 */
public record Design(String name, Equipment equipment, List<AirMover> airMovers, AirPath airPath,
        List<HeatSource> heatSources, List<Condition> conditions, List<MissionPhase> mission, List<ControlLaw> controlLaws,
        List<Requirement> requirements, Value.Tree more) implements Noun {

    /** Version of the file format that this model writes. */
    public static final int FORMAT = 1;

    /** The fields in the file. */
    public static final Form FORM = Form.of("design", "A design: equipment, air path, heat, conditions, requirements.",
            Field.whole("format", "format", 1, FORMAT, "Version of the file format.").mandatory(),
            Field.words("name", "name", "Title of the design."),
            Field.part("equipment", "equipment", Equipment.FORM, "What is to be cooled, as a whole."),
            Field.parts("airMovers", "air movers", AirMover.FORM, "The parts that the banks use."),
            Field.part("airPath", "air path", AirPath.FORM, "Bays and passages."),
            Field.parts("heatSources", "heat sources", HeatSource.FORM, "What gives off heat."),
            Field.parts("conditions", "conditions", Condition.FORM,
                    "Operating cases; one named nominal at 20 °C and sea level where there is none."),
            Field.parts("mission", "mission profile", MissionPhase.FORM, "Time per condition and year."),
            Field.parts("controlLaws", "control laws", ControlLaw.FORM, "Speed settings against temperatures."),
            Field.parts("requirements", "requirements", Requirement.FORM, "Limits on figures."));

    /** A design with nothing in it. */
    public static final Design EMPTY = new Design("", Equipment.UNNAMED, List.of(), AirPath.EMPTY, List.of(), List.of(),
            List.of(), List.of(), List.of(), Value.Tree.EMPTY);

    public Design {
        airMovers = List.copyOf(airMovers);
        heatSources = List.copyOf(heatSources);
        conditions = List.copyOf(conditions);
        mission = List.copyOf(mission);
        controlLaws = List.copyOf(controlLaws);
        requirements = List.copyOf(requirements);
    }

    /** Maps values of {@link #FORM} to a design; what could not be read is left at nothing. */
    public static Design from(Values values) {
        return new Design(values.text("name"), values.part("equipment").map(Equipment::from).orElse(Equipment.UNNAMED),
                values.parts("airMovers").stream().map(AirMover::from).toList(),
                values.part("airPath").map(AirPath::from).orElse(AirPath.EMPTY),
                values.parts("heatSources").stream().map(HeatSource::from).toList(),
                values.parts("conditions").stream().map(Condition::from).toList(),
                values.parts("mission").stream().map(MissionPhase::from).toList(),
                values.parts("controlLaws").stream().map(ControlLaw::from).toList(),
                values.parts("requirements").stream().map(Requirement::from).toList(), values.rest());
    }

    @Override
    public Value.Tree tree() {
        return new TreeBuilder().value("format", Value.Num.of(FORMAT)).text("name", name).tree("equipment", equipment.tree())
                .items("airMovers", airMovers.stream().map(AirMover::tree).toList()).tree("airPath", airPath.tree())
                .items("heatSources", heatSources.stream().map(HeatSource::tree).toList())
                .items("conditions", conditions.stream().map(Condition::tree).toList())
                .items("mission", mission.stream().map(MissionPhase::tree).toList())
                .items("controlLaws", controlLaws.stream().map(ControlLaw::tree).toList())
                .items("requirements", requirements.stream().map(Requirement::tree).toList()).build(more);
    }

    /** The conditions, or {@link Condition#NOMINAL} alone where the design names none. */
    public List<Condition> workingConditions() {
        return conditions.isEmpty() ? List.of(Condition.NOMINAL) : conditions;
    }

    /** The air mover of that id. */
    public Optional<AirMover> airMover(String id) {
        return airMovers.stream().filter(mover -> mover.id().equals(id)).findFirst();
    }

    /** This design with another air path. */
    public Design withAirPath(AirPath changed) {
        return new Design(name, equipment, airMovers, changed, heatSources, conditions, mission, controlLaws, requirements, more);
    }

    /** This design with other air movers. */
    public Design withAirMovers(List<AirMover> changed) {
        return new Design(name, equipment, changed, airPath, heatSources, conditions, mission, controlLaws, requirements, more);
    }

    /** This design with other heat sources. */
    public Design withHeatSources(List<HeatSource> changed) {
        return new Design(name, equipment, airMovers, airPath, changed, conditions, mission, controlLaws, requirements, more);
    }

    /** This design with other conditions. */
    public Design withConditions(List<Condition> changed) {
        return new Design(name, equipment, airMovers, airPath, heatSources, changed, mission, controlLaws, requirements, more);
    }

    /** This design with another mission profile. */
    public Design withMission(List<MissionPhase> changed) {
        return new Design(name, equipment, airMovers, airPath, heatSources, conditions, changed, controlLaws, requirements, more);
    }

    /** This design with other control laws. */
    public Design withControlLaws(List<ControlLaw> changed) {
        return new Design(name, equipment, airMovers, airPath, heatSources, conditions, mission, changed, requirements, more);
    }

    /** This design with other requirements. */
    public Design withRequirements(List<Requirement> changed) {
        return new Design(name, equipment, airMovers, airPath, heatSources, conditions, mission, controlLaws, changed, more);
    }

    /** This design with other equipment. */
    public Design withEquipment(Equipment changed) {
        return new Design(name, changed, airMovers, airPath, heatSources, conditions, mission, controlLaws, requirements, more);
    }

    /** This design under another name. */
    public Design withName(String changed) {
        return new Design(changed, equipment, airMovers, airPath, heatSources, conditions, mission, controlLaws, requirements, more);
    }

    /** This design with other unknown members. */
    public Design withMore(Value.Tree changed) {
        return new Design(name, equipment, airMovers, airPath, heatSources, conditions, mission, controlLaws, requirements, changed);
    }
}
