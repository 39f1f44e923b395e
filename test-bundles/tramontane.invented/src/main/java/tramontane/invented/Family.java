package tramontane.invented;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import tramontane.model.Value;

/**
 * One family of invented parts: a rotor shape, a bearing, a protection and a quality in a few sizes, voltages and speeds.
 *
 * <p>Each part follows from tip speed, size and the coefficients of its {@link Rotor}: flow and pressure, from these and the
 * efficiency the electrical power, from flow and pressure the noise. All functions are those of {@link StrictMath}, so that the same
 * seed gives the same bytes on every machine.
 */
final class Family {

    private static final double DENSITY = 1.2;

    /** Share of the frame that an axial rotor fills. */
    private static final double AXIAL_SHARE = 0.94;

    private static final Map<String, Double> FLOW_SCALES = Map.of("m³/h", 3600.0, "cfm", 60 / 0.028316846592, "l/s", 1000.0, "l/min", 60e3);

    private static final Map<String, Double> PRESSURE_SCALES = Map.of("Pa", 1.0, "inH2O", 1 / 249.08891, "mmH2O", 1 / 9.80665);

    /** Speeds of one size, from low to high, by how many there are. */
    private static final List<String> GRADES = List.of("M", "LH", "LMH");

    /** Life at 40 °C of each kind of bearing, h; common practice, from memory. */
    private static final Map<String, Double> LIVES = Map.of("sleeve", 30e3, "fluid-film", 50e3, "magnetically supported sleeve", 60e3, "ball",
            70e3);

    /** Highest temperature of the air by kind of bearing, °C; common practice, from memory. */
    private static final Map<String, int[]> WARMEST = Map.of("sleeve", new int[] {55, 60, 70}, "fluid-film", new int[] {60, 70},
            "magnetically supported sleeve", new int[] {70}, "ball", new int[] {70, 75, 85});

    /** Sets its draws apart from those of noise. */
    private static final long LIFE_SEED = 0x5EED_11FE;

    private final Random random;
    private final Line line;
    private final Maker maker;
    private final String name;
    private final Rotor rotor;
    private final String bearing;
    private final String ingress;
    private final String control;
    private final String signal;
    private final double flowScatter;
    private final double pressureScatter;
    private final double efficiencyScatter;
    private final double noiseScatter;
    private final double noiseExponent;
    private final NoiseSheet sheet;
    private final LifeSheet lifeSheet;
    private final double fixedShare;
    private final boolean tellsFixedLoss;
    private final boolean tellsPowerCurve;
    private final boolean slower;
    private final int tolerance;
    private final int warmest;
    private final int coldest;
    private final String origin;
    private final String status;
    private final List<Value.Tree> parts;

    /**
     * @param number from 0; picks the line in turn
     * @param seed   of the catalogue
     */
    Family(int number, long seed) {
        random = new Random(seed * 1_000_003 + number);
        random.nextInt(); // the first of neighbouring seeds are alike
        line = Line.values()[number % Line.values().length];
        maker = pick(List.of(Maker.values()));
        name = maker.code() + "-" + (char) ('A' + number % Line.values().length) + (number / Line.values().length + 1);
        rotor = line.rotor();
        bearing = pick(line.bearings());
        ingress = pick(line.ingress());
        control = pick(line.controls());
        signal = pick(line.signals());
        flowScatter = between(0.92, 1.08);
        pressureScatter = between(0.92, 1.08);
        efficiencyScatter = between(0.88, 1.1);
        noiseScatter = between(-2, 2);
        noiseExponent = between(50, 58);
        sheet = new NoiseSheet(line, noiseExponent, new Random(~(seed * 1_000_003 + number)));
        fixedShare = between(0.06, 0.18);
        tellsFixedLoss = random.nextBoolean();
        tellsPowerCurve = random.nextInt(3) > 0;
        slower = (control.equals("duty") || control.equals("control voltage")) && random.nextInt(5) < 2;
        tolerance = 5 + random.nextInt(11);
        int[] classes = WARMEST.get(bearing);
        warmest = classes[random.nextInt(classes.length)];
        lifeSheet = new LifeSheet(bearing, warmest, new Random(~(seed * 1_000_003 + number) ^ LIFE_SEED));
        coldest = bearing.equals("ball") ? random.nextBoolean() ? -40 : -20 : -10;
        origin = random.nextInt(6) == 0 ? "measured" : random.nextInt(6) == 0 ? "estimated" : "datasheet";
        status = random.nextInt(12) == 0 ? "ended" : random.nextInt(9) == 0 ? "last order" : "current";
        parts = List.copyOf(make());
    }

    /** The beginning of its file's name. */
    String file() {
        return maker.name().toLowerCase(Locale.ROOT) + "-" + name.substring(maker.code().length() + 1)
                .toLowerCase(Locale.ROOT);
    }

    /** Its parts as they stand in files, each by itself. */
    List<Value.Tree> parts() {
        return parts;
    }

    private List<Value.Tree> make() {
        List<Value.Tree> made = new ArrayList<>();
        int sizes = 1 + random.nextInt(2);
        int first = random.nextInt(line.frames().size() - sizes + 1);
        int grades = line.induction() ? line.slowest() == line.fastest() ? 1 : 2 : 2 + random.nextInt(2);
        int volts = Math.min(line.volts().size(), 12 / (sizes * grades));
        int volt = random.nextInt(line.volts().size() - volts + 1);
        double slowest = line.slowest() * between(0.95, 1.15);
        double fastest = Math.min(line.fastest() * between(0.85, 1.05), rotor.tip());
        for (int[] frame : line.frames().subList(first, first + sizes)) {
            boolean dips = rotor == Rotor.AXIAL && Math.min(frame[0], frame[1]) >= 80;
            Rotor.Shape shape = rotor.shape(dips, random);
            for (int grade = 0; grade < grades; grade++) {
                double share = grades == 1 ? 1 : (double) grade / (grades - 1);
                double speed = line.induction() ? asynchronous(grade == 0 ? line.fastest() : line.slowest())
                        : slowest * StrictMath.pow(fastest / slowest, share) / diameter(frame) / Math.PI * 60;
                for (String each : line.volts().subList(volt, volt + volts)) {
                    made.add(part(frame, shape, wholeSpeed(speed), GRADES.get(grades - 1).charAt(grade), each));
                }
            }
        }
        return made;
    }

    /** Speed of an induction motor at 50 Hz, rpm: shaded poles slip by a tenth and more. */
    private double asynchronous(double poles) {
        return 120 * 50 / poles * between(0.85, 0.93);
    }

    private static double wholeSpeed(double rpm) {
        double step = rpm > 5000 ? 100 : 50;
        return Math.rint(rpm / step) * step;
    }

    /** Diameter of the rotor in a frame, m. */
    private double diameter(int[] frame) {
        double across = Math.min(frame[0], frame[1]) / 1000.0;
        return switch (rotor) {
            case AXIAL, MIXED -> AXIAL_SHARE * across;
            case FORWARD -> 0.70 * across;
            case BACKWARD -> 0.97 * across;
            case CROSS -> 0.65 * Math.min(frame[1], frame[2]) / 1000.0;
        };
    }

    private double openArea(int[] frame, double diameter) {
        return switch (rotor) {
            case AXIAL, MIXED -> {
                double hub = diameter * (0.38 + 0.22 * StrictMath.exp(-diameter / 0.06));
                yield 0.95 * Math.PI / 4 * (diameter * diameter - hub * hub);
            }
            case FORWARD -> 0.5 * frame[0] / 1000.0 * 0.9 * frame[2] / 1000.0; // the outlet
            case BACKWARD -> 0.95 * Math.PI / 4 * 0.64 * 0.64 * diameter * diameter; // the inlet
            case CROSS -> 0.85 * frame[0] / 1000.0 * 0.8 * diameter;
        };
    }

    private Value.Tree part(int[] frame, Rotor.Shape shape, double rpm, char grade, String volts) {
        double diameter = Double.parseDouble(Members.rounded(diameter(frame), 3));
        double slender = frame[2] / 1000.0 / diameter;
        double tip = Math.PI * diameter * rpm / 60;
        double area = rotor == Rotor.CROSS ? 0.85 * frame[0] / 1000.0 * diameter : Math.PI / 4 * diameter * diameter;
        double flow = rotor.flowCoefficient(diameter, slender) * flowScatter * between(0.98, 1.02) * area * tip;
        double pressure = rotor.pressureCoefficient(diameter, slender) * pressureScatter * between(0.98, 1.02) * DENSITY / 2 * tip * tip;
        int best = shape.best();
        double air = flow * pressure * shape.flow()[best] * shape.pressure()[best];
        double power = air / (rotor.efficiency(diameter) * efficiencyScatter * maker.efficiency() * motorShare(diameter));
        double fixed = fixedShare * power + (Double.parseDouble(volts) > 60 ? 0.4 : 0.03); // electronics or iron draw something in the smallest, too
        Run run = new Run(shape, rpm, flow, pressure, fixed, (1 - fixedShare) * power / shape.shaft()[best]);
        double noise = rotor.specificNoise() + maker.noise() + noiseScatter
                + 10 * StrictMath.log10(flow * shape.flow()[best]) + 20 * StrictMath.log10(pressure * shape.pressure()[best])
                + 6 * StrictMath.exp(-diameter / 0.03) // gaps and bearings of small ones are coarse
                + (noiseExponent - 50) * StrictMath.log10(tip / ordinaryTip());
        String size = frame[0] == frame[1] ? frame[0] + "x" + frame[2] : frame[0] + "x" + frame[1] + "x" + frame[2];
        String id = name + "-" + size + "-" + volts + grade;
        String speed = Members.rounded(rpm, 6) + " rpm";
        Members part = new Members().text("id", id).text("maker", maker.title()).text("type", rotor.type())
                .text("width", frame[0] + " mm").text("height", frame[1] + " mm").text("depth", frame[2] + " mm")
                .text("rotorDiameter", Members.rounded(diameter * 1000, 3) + " mm")
                .text("openArea", Members.rounded(openArea(frame, diameter) * 1e4, 3) + " cm²")
                .text("ratedSpeed", speed).text("motor", line.motor());
        if (line.motor().equals("DC unregulated")) {
            part.text("noLoadSpeed", Members.rounded(rpm * between(1.08, 1.22), 3) + " rpm");
        }
        part.text("category", "A");
        if (!tellsPowerCurve) {
            part.text("ratedPower", watts(run.highestPower()));
        }
        if (tellsFixedLoss) {
            part.text("fixedLoss", watts(fixed));
        }
        part.text("family", name).text("status", status).text("bearing", bearing).text("ingress", ingress)
                .text("lowestTemperature", coldest + " °C").text("highestTemperature", warmest + " °C")
                .text("mass", mass(frame)).number("price", price(frame, tip)).text("currency", "EUR").items("origins", origins());
        part.items("curves", curves(run, volts));
        return part.tree("sections", new Members().tree("drive", drive(run, volts)).tree("noise", sheet.section(
                new NoiseSheet.Part(shape, run.power(1), rpm, noise, share -> flow(run, share), share -> pressure(run, share))))
                .tree("life", lifeSheet.section(life(tip)))).tree();
    }

    /** A mover at its rated speed. */
    private record Run(Rotor.Shape shape, double rpm, double flow, double pressure, double fixed, double shaft) {

        double[] power(double speed) {
            return scaled(shape.shaft(), shaft * speed * speed * speed, fixed);
        }

        double highestPower() {
            double highest = 0;
            for (double power : power(1)) {
                highest = Math.max(highest, power);
            }
            return highest;
        }
    }

    private static double[] scaled(double[] values, double factor, double offset) {
        double[] scaled = values.clone();
        for (int i = 0; i < scaled.length; i++) {
            scaled[i] = scaled[i] * factor + offset;
        }
        return scaled;
    }

    /** Of the efficiency with a good brushless motor, what is left with this one. */
    private double motorShare(double diameter) {
        return switch (line.motor()) {
            case "AC" -> diameter < 0.15 ? 0.5 : 0.7; // shaded poles, run capacitors
            case "EC" -> 1.08;
            case "DC regulated" -> 1;
            default -> 0.92;
        };
    }

    /** Tip speed at which levels follow the specific noise exactly, m/s. */
    private double ordinaryTip() {
        return switch (rotor) {
            case AXIAL -> 18;
            case MIXED, BACKWARD -> 30;
            case FORWARD -> 13;
            case CROSS -> 5;
        };
    }

    private List<Value.Tree> curves(Run run, String volts) {
        List<Value.Tree> curves = new ArrayList<>();
        double[] speeds = line.induction() ? new double[] {1, 1.14} : slower ? new double[] {1, 0.6, 0.35} : new double[] {1};
        for (int i = 0; i < speeds.length; i++) {
            double speed = Double.parseDouble(Members.rounded(run.rpm() * speeds[i], 4)) / run.rpm();
            Members curve = new Members().text("speed", Members.rounded(run.rpm() * speed, 4) + " rpm").text("voltage", volts + " V");
            if (line.induction()) {
                curve.text("frequency", i == 0 ? "50 Hz" : "60 Hz");
            }
            String flowUnit = flowUnit(run);
            String pressureUnit = run.pressure() * speed * speed < 60 ? "Pa" : maker.pressureUnit();
            curve.text("density", "1.2 kg/m³")
                    .text("flow", Members.list(run.shape().flow(), run.flow() * speed * FLOW_SCALES.get(flowUnit), 3, flowUnit))
                    .text("pressure", Members.list(run.shape().pressure(),
                            run.pressure() * speed * speed * PRESSURE_SCALES.get(pressureUnit), 3, pressureUnit));
            if (tellsPowerCurve) {
                curve.text("power", Members.list(run.power(speed), run.fixed() < 0.05 ? 1000 : 1, 3, run.fixed() < 0.05 ? "mW" : "W"));
            }
            curves.add(curve.text("tolerance", tolerance + " %").tree());
        }
        return curves;
    }

    /** Few decimals are printed of small flows in large units. */
    private String flowUnit(Run run) {
        return run.flow() < 2e-3 ? "l/min" : maker.flowUnit();
    }

    private String flow(Run run, double share) {
        return Members.list(new double[] {share}, run.flow() * FLOW_SCALES.get(flowUnit(run)), 3, flowUnit(run));
    }

    private static String pressure(Run run, double share) {
        return Members.list(new double[] {share}, run.pressure(), 3, "Pa");
    }

    private static String watts(double power) {
        return power < 1 ? Members.rounded(power * 1000, 3) + " mW" : Members.rounded(power, 3) + " W";
    }

    private static String amperes(double current) {
        return current < 1 ? Members.rounded(current * 1000, 3) + " mA" : Members.rounded(current, 3) + " A";
    }

    private Members drive(Run run, String voltage) {
        double volts = Double.parseDouble(voltage);
        boolean alternating = volts > 60;
        double powerFactor = !alternating ? 1 : line.induction() ? 0.6 : run.highestPower() > 75 ? 0.95 : 0.58;
        double current = run.highestPower() / volts / powerFactor;
        Members supply = new Members().text("current", alternating ? "AC" : "DC").text("voltage", voltage + " V")
                .text("lowest", Members.rounded(volts * (alternating ? 0.88 : volts < 6 ? 0.8 : 0.6), 3) + " V")
                .text("highest", Members.rounded(volts * (alternating ? 1.1 : 1.15), 3) + " V");
        if (alternating) {
            supply.text("frequency", "50 60 Hz");
        }
        supply.text("rated", amperes(current));
        if (alternating) {
            supply.text("powerFactor", Members.rounded(powerFactor * 100, 2) + " %");
        }
        if (line.induction()) {
            supply.text("locked", amperes(current * 1.5)).text("protection", run.highestPower() > 30 ? "thermal cut-out" : "impedance");
        } else {
            supply.text("start", amperes(current * 1.8)).text("protection", "electronic").text("retry", "5 s");
        }
        int wires = 2 + switch (control) {
            case "duty", "control voltage" -> 1;
            case "bus" -> 2;
            default -> 0;
        } + (signal.equals("none") || control.equals("bus") ? 0 : 1);
        Members drive = new Members().number("wires", Integer.toString(wires)).tree("supply", supply);
        control(run, volts).ifPresent(given -> drive.tree("control", given));
        if (!signal.equals("none")) {
            Members told = new Members().text("kind", signal);
            drive.tree("signal", signal.equals("speed") ? told.number("pulses", "2")
                    : told.text("lockedBelow", Members.rounded(run.rpm() * 0.3, 2) + " rpm"));
        }
        return drive;
    }

    private Optional<Members> control(Run run, double volts) {
        String full = Members.rounded(run.rpm(), 6);
        Members kind = new Members().text("kind", control);
        return switch (control) {
            case "duty" -> Optional.of(kind.text("setting", "20 60 100 %")
                    .text("speed", Members.rounded(run.rpm() * 0.25, 2) + " " + Members.rounded(run.rpm() * 0.63, 3) + " " + full + " rpm")
                    .text("tolerance", "10 %").text("startSetting", "18 %").text("stopSetting", "12 %").text("leastFrequency", "21 kHz")
                    .text("mostFrequency", "28 kHz"));
            case "control voltage" -> Optional.of(kind.text("setting", "10 100 %")
                    .text("speed", Members.rounded(run.rpm() * 0.15, 2) + " " + full + " rpm").text("tolerance", "8 %")
                    .text("below", "holds, off at zero"));
            case "thermistor" -> Optional.of(kind.text("temperature", "25 45 °C")
                    .text("speed", Members.rounded(run.rpm() * 0.5, 2) + " " + full + " rpm").text("tolerance", "10 %"));
            case "voltage" -> Optional.of(kind.text("tolerance", "10 %")
                    .text("startVoltage", Members.rounded(volts * (volts < 6 ? 0.8 : 0.6), 3) + " V")
                    .text("stallVoltage", Members.rounded(volts * 0.4, 3) + " V"));
            case "bus" -> Optional.of(kind.text("tolerance", "3 %"));
            default -> line.induction() ? Optional.of(kind.number("poles",
                    Integer.toString(run.rpm() < 1500 ? 4 : 2))) : Optional.empty();
        };
    }

    private String mass(int[] frame) {
        double volume = frame[0] * frame[1] * frame[2] * 1e-9;
        double density = 450 * (1 + 0.03 / (frame[0] / 1000.0)) * (line.induction() ? 1.8 : 1) * (rotor == Rotor.CROSS ? 0.6 : 1);
        double mass = volume * density;
        return mass < 1 ? Members.rounded(mass * 1000, 2) + " g" : Members.rounded(mass, 3) + " kg";
    }

    /** Of one piece out of a hundred. */
    private String price(int[] frame, double tip) {
        double size = Math.max(frame[0], frame[1]) / 1000.0;
        double price = (3.2 + 13 * StrictMath.pow(size / 0.12, 1.8)) * maker.price() * switch (line.motor()) {
            case "EC" -> 2.2;
            case "AC" -> 1.3;
            case "DC regulated" -> 1.4;
            default -> 1;
        } * switch (bearing) {
            case "ball" -> 1.12;
            case "sleeve" -> 0.9;
            default -> 1.05;
        } * (ingress.compareTo("IP54") >= 0 ? 1.35 : 1) * (rotor == Rotor.AXIAL ? 1 : 1.25) * (1 + 0.3 * tip / rotor.tip())
                * between(0.95, 1.05);
        return Members.rounded(price, 3);
    }

    /** L10 at 40 °C, h. */
    private double life(double tip) {
        return LIVES.get(bearing) * (line.induction() ? 0.7 : 1) * (warmest >= 75 ? 1.1 : warmest < 65 ? 0.9 : 1)
                * StrictMath.pow(ordinaryTip() / tip, 0.25);
    }

    private List<Value.Tree> origins() {
        List<Value.Tree> all = new ArrayList<>();
        all.add(new Members().text("from", "datasheet").text("source", "invented data sheet " + name).tree());
        all.add(of("curves", origin, tolerance + " %", switch (origin) {
            case "measured" -> "chamber of the invented lab, report " + name;
            case "estimated" -> "scaled from a like family";
            default -> "invented data sheet " + name;
        }));
        all.add(of("mass", "datasheet", "5 %", "invented data sheet " + name));
        all.add(of("price", "estimated", "25 %", "100 pieces, invented"));
        all.add(of("sections.drive.supply", "datasheet", "10 %", "invented data sheet " + name));
        all.add(sheet.origin(name));
        all.add(of("sections.life", "estimated", "30 %", "invented life test of a like family"));
        return all;
    }

    private static Value.Tree of(String field, String from, String tolerance, String source) {
        return new Members().text("of", field).text("from", from).text("tolerance", tolerance).text("source", source).tree();
    }

    private double between(double least, double most) {
        return least + (most - least) * random.nextDouble();
    }

    private <T> T pick(List<T> of) {
        return of.get(random.nextInt(of.size()));
    }
}
