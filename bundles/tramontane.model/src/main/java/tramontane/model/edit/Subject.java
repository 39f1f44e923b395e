package tramontane.model.edit;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import tramontane.model.AirMover;
import tramontane.model.AirPath;
import tramontane.model.Bay;
import tramontane.model.Condition;
import tramontane.model.ControlLaw;
import tramontane.model.Design;
import tramontane.model.Equipment;
import tramontane.model.Field;
import tramontane.model.Form;
import tramontane.model.FormReader;
import tramontane.model.HeatSource;
import tramontane.model.MissionPhase;
import tramontane.model.Noun;
import tramontane.model.Passage;
import tramontane.model.Requirement;
import tramontane.model.Value;
import tramontane.model.Values;

/**
 * One thing of a design that can be selected, shown and edited by itself.
 *
 * @param kind what kind of thing it is
 * @param id   its id; of mission phases and requirements, which have none, their place in the list, counted from 0; empty for
 *             the design and its equipment
 * @param nth  which of several things of that kind and id, 0 for the first; more than one is a mistake that somebody may be
 *             about to mend
 */
public record Subject(Kind kind, String id, int nth) {

    /** The design as a whole. */
    public static final Subject DESIGN = new Subject(Kind.DESIGN, "");

    /** Its equipment. */
    public static final Subject EQUIPMENT = new Subject(Kind.EQUIPMENT, "");

    /** The air outside. It stands in no file. */
    public static final Subject OUTSIDE = new Subject(Kind.BAY, Bay.OUTSIDE);

    public Subject {
        Objects.requireNonNull(kind);
        Objects.requireNonNull(id);
        if (nth < 0) {
            throw new IllegalArgumentException("things of one id are counted from 0, got " + nth);
        }
    }

    /** The first thing of that kind and id. */
    public Subject(Kind kind, String id) {
        this(kind, id, 0);
    }

    /** A passage. */
    public static Subject passage(String id) {
        return new Subject(Kind.PASSAGE, id);
    }

    /** A bay. */
    public static Subject bay(String id) {
        return new Subject(Kind.BAY, id);
    }

    /** A heat source. */
    public static Subject heatSource(String id) {
        return new Subject(Kind.HEAT_SOURCE, id);
    }

    /** An air mover. */
    public static Subject airMover(String id) {
        return new Subject(Kind.AIR_MOVER, id);
    }

    /** A condition. */
    public static Subject condition(String id) {
        return new Subject(Kind.CONDITION, id);
    }

    /** The title and the sections of a design without what stands in its lists. */
    private record Title(String name, Value.Tree more) implements Noun {

        static final Form FORM = Form.of("design", "The design as a whole.", Design.FORM.field("name").orElseThrow());

        static Title from(Values values) {
            return new Title(values.text("name"), values.rest());
        }

        @Override
        public Value.Tree tree() {
            Value.Tree tree = name.isEmpty() ? Value.Tree.EMPTY : Value.Tree.EMPTY.with("name", new Value.Text(name));
            return tree.with(more);
        }
    }

    /** Kinds of things. */
    public enum Kind {
        /** The design as a whole: its title and its sections. */
        DESIGN("", Title.FORM),
        /** What is to be cooled, as a whole. */
        EQUIPMENT("equipment", Equipment.FORM),
        /** A part that banks use. */
        AIR_MOVER("airMovers", AirMover.FORM),
        /** A volume of air. */
        BAY("airPath.bays", Bay.FORM),
        /** A passage of any kind, banks among them. */
        PASSAGE("airPath.passages", Passage.FORM),
        /** What gives off heat. */
        HEAT_SOURCE("heatSources", HeatSource.FORM),
        /** An operating case. */
        CONDITION("conditions", Condition.FORM),
        /** Time per year in a condition. */
        MISSION_PHASE("mission", MissionPhase.FORM),
        /** Speed setting against a temperature. */
        CONTROL_LAW("controlLaws", ControlLaw.FORM),
        /** A limit on a figure. */
        REQUIREMENT("requirements", Requirement.FORM);

        private final String place;
        private final Form form;

        Kind(String place, Form form) {
            this.place = place;
            this.form = form;
        }

        /** What such a thing is called: {@code heat source}. */
        public String noun() {
            return form.name();
        }

        /** The fields that every such thing has, without those that its kind or its sections bring. */
        public Form form() {
            return form;
        }

        /** Where such things stand in a file: {@code airPath.bays}; empty for the design itself. */
        public String place() {
            return place;
        }

        /** Whether a design holds a list of such things. */
        public boolean isListed() {
            return this != DESIGN && this != EQUIPMENT;
        }

        /** Whether such things have ids of their own. */
        public boolean isNamed() {
            return isListed() && this != MISSION_PHASE && this != REQUIREMENT;
        }

        /** All such things of a design, in its order. */
        public List<? extends Noun> of(Design design) {
            return switch (this) {
                case DESIGN -> List.of(new Title(design.name(), design.more()));
                case EQUIPMENT -> List.of(design.equipment());
                case AIR_MOVER -> design.airMovers();
                case BAY -> design.airPath().bays();
                case PASSAGE -> design.airPath().passages();
                case HEAT_SOURCE -> design.heatSources();
                case CONDITION -> design.conditions();
                case MISSION_PHASE -> design.mission();
                case CONTROL_LAW -> design.controlLaws();
                case REQUIREMENT -> design.requirements();
            };
        }

        /** The ids of such things, in the design's order; empty texts for those that have none. */
        public List<String> ids(Design design) {
            return of(design).stream().map(Kind::id).toList();
        }

        /** The subjects of this kind, in the design's order. */
        public List<Subject> subjects(Design design) {
            List<? extends Noun> things = of(design);
            List<Subject> subjects = new ArrayList<>(things.size());
            Map<String, Integer> seen = new HashMap<>();
            for (int i = 0; i < things.size(); i++) {
                String id = isNamed() || !isListed() ? id(things.get(i)) : Integer.toString(i);
                subjects.add(new Subject(this, id, seen.merge(id, 1, Integer::sum) - 1));
            }
            return List.copyOf(subjects);
        }

        private static String id(Noun thing) {
            return switch (thing) {
                case AirMover mover -> mover.id();
                case Bay bay -> bay.id();
                case Passage passage -> passage.id();
                case HeatSource source -> source.id();
                case Condition condition -> condition.id();
                case ControlLaw law -> law.id();
                default -> "";
            };
        }

        /** Such a thing as it is read from an object; what could not be read is left at nothing. */
        Noun read(Value.Tree tree) {
            Values values = FormReader.read(form, tree, "", new ArrayList<>());
            return switch (this) {
                case DESIGN -> Title.from(values);
                case EQUIPMENT -> Equipment.from(values);
                case AIR_MOVER -> AirMover.from(values);
                case BAY -> Bay.from(values);
                case PASSAGE -> Passage.from(values);
                case HEAT_SOURCE -> HeatSource.from(values);
                case CONDITION -> Condition.from(values);
                case MISSION_PHASE -> MissionPhase.from(values);
                case CONTROL_LAW -> ControlLaw.from(values);
                case REQUIREMENT -> Requirement.from(values);
            };
        }

        /** A design with these things in the place of its own ones. */
        Design in(Design design, List<? extends Noun> things) {
            AirPath path = design.airPath();
            return switch (this) {
                case DESIGN -> design.withName(((Title) things.getFirst()).name()).withMore(things.getFirst().more());
                case EQUIPMENT -> design.withEquipment((Equipment) things.getFirst());
                case AIR_MOVER -> design.withAirMovers(all(things, AirMover.class));
                case BAY -> design.withAirPath(new AirPath(all(things, Bay.class), path.passages(), path.more()));
                case PASSAGE -> design.withAirPath(new AirPath(path.bays(), all(things, Passage.class), path.more()));
                case HEAT_SOURCE -> design.withHeatSources(all(things, HeatSource.class));
                case CONDITION -> design.withConditions(all(things, Condition.class));
                case MISSION_PHASE -> design.withMission(all(things, MissionPhase.class));
                case CONTROL_LAW -> design.withControlLaws(all(things, ControlLaw.class));
                case REQUIREMENT -> design.withRequirements(all(things, Requirement.class));
            };
        }

        private static <T> List<T> all(List<? extends Noun> things, Class<T> type) {
            return things.stream().map(type::cast).toList();
        }
    }

    /** Every subject of a design: itself, its equipment, then what its lists hold in the order of the file. */
    public static List<Subject> all(Design design) {
        List<Subject> all = new ArrayList<>();
        for (Kind kind : Kind.values()) {
            all.addAll(kind.subjects(design));
        }
        return List.copyOf(all);
    }

    /** What stands at a place of a file or holds it: {@code airPath.passages[3].freeArea} lies in the fourth passage. */
    public static Optional<Subject> at(Design design, String place) {
        Subject found = place.startsWith(Kind.EQUIPMENT.place()) ? EQUIPMENT : DESIGN;
        for (Kind kind : Kind.values()) {
            String start = kind.place() + "[";
            if (kind.isListed() && place.startsWith(start) && place.indexOf(']') > 0) {
                List<Subject> subjects = kind.subjects(design);
                try {
                    int index = Integer.parseInt(place.substring(start.length(), place.indexOf(']', start.length())));
                    return index < subjects.size() ? Optional.of(subjects.get(index)) : Optional.empty();
                } catch (NumberFormatException e) {
                    return Optional.empty();
                }
            }
        }
        return Optional.of(found);
    }

    /** Its place in the design's list of such things; empty where the design has no such thing. */
    public OptionalInt index(Design design) {
        if (kind.isListed() && !kind.isNamed()) {
            try {
                int index = Integer.parseInt(id);
                return index >= 0 && index < kind.of(design).size() ? OptionalInt.of(index) : OptionalInt.empty();
            } catch (NumberFormatException e) {
                return OptionalInt.empty();
            }
        }
        int left = nth;
        List<? extends Noun> things = kind.of(design);
        for (int i = 0; i < things.size(); i++) {
            if (Kind.id(things.get(i)).equals(id) && left-- == 0) {
                return OptionalInt.of(i);
            }
        }
        return OptionalInt.empty();
    }

    /** Whether the design has it; the air outside is always there. */
    public boolean isIn(Design design) {
        return isOutside() || index(design).isPresent();
    }

    /** Whether it is the air outside. */
    public boolean isOutside() {
        return kind == Kind.BAY && id.equals(Bay.OUTSIDE);
    }

    /** The record of the model; empty for the air outside and for what the design does not have. */
    public Optional<Noun> noun(Design design) {
        OptionalInt index = index(design);
        return index.isPresent() ? Optional.of(kind.of(design).get(index.getAsInt())) : Optional.empty();
    }

    /** The object as it stands in the file; empty where {@link #noun} is. */
    public Optional<Value.Tree> tree(Design design) {
        return noun(design).map(Noun::tree);
    }

    /** Where it stands in the file, as a problem gives it: {@code airPath.passages[3]}; empty text for the design itself. */
    public String place(Design design) {
        OptionalInt index = index(design);
        return kind.isListed() && index.isPresent() ? kind.place() + "[" + index.getAsInt() + "]" : kind.place();
    }

    /**
     * What it is called: its id, or what it says where it has none.
     *
     * @param design the design that has it
     */
    public String title(Design design) {
        return switch (noun(design).orElse(null)) {
            case null -> id.isEmpty() ? kind.noun() : id;
            case Title title -> title.name().isBlank() ? "design" : title.name();
            case Equipment equipment -> equipment.name().isBlank() ? "equipment" : equipment.name();
            case MissionPhase phase -> phase.condition().isBlank() ? "mission phase" : "time in " + phase.condition();
            case Requirement requirement -> requirement.figure().isBlank() ? "requirement"
                    : requirement.figure() + (requirement.place().equals(Requirement.WORST) ? "" : " at " + requirement.place());
            case Noun other -> id.isBlank() ? kind.noun() + " without name" : id;
        };
    }
}
