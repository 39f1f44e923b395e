package tramontane.invented;

import java.util.Arrays;
import java.util.List;

/** Lines of products, from which families are drawn: who would buy which sizes, fed and controlled how. */
enum Line {
    TINY(Rotor.AXIAL, "DC unregulated", "8x8x3 10x10x4 12x12x4 15x15x4 17x17x8 20x20x6", "5", 7, 12, "magnetically supported sleeve|sleeve",
            "IP20|IP40", "none", "none"),
    THIN(Rotor.AXIAL, "DC unregulated", "20x20x8 25x25x6 25x25x10 30x30x6 30x30x10 35x35x10", "5 12", 9, 18, "sleeve|fluid-film|ball",
            "IP20", "voltage", "none|speed|locked rotor"),
    SMALL(Rotor.AXIAL, "DC unregulated", "40x40x10 40x40x15 40x40x20 50x50x10 50x50x15 50x50x20 60x60x15", "5 12 24", 10, 20,
            "sleeve|ball|fluid-film", "IP20|IP54", "voltage", "none|speed|locked rotor"),
    COMPACT(Rotor.AXIAL, "DC unregulated", "60x60x25 70x70x15 70x70x25 80x80x20 80x80x25 92x92x25", "12 24", 11, 20, "ball|sleeve",
            "IP20|IP55", "voltage", "none|speed|locked rotor"),
    WIDE(Rotor.AXIAL, "DC regulated", "92x92x25 92x92x32 120x120x25 120x120x32 120x120x38 140x140x25", "12 24 48", 12, 24, "ball|fluid-film",
            "IP20|IP54", "duty", "speed"),
    QUIET(Rotor.AXIAL, "DC regulated", "80x80x15 80x80x25 92x92x25 120x120x15 120x120x25 140x140x25", "12", 6, 12,
            "fluid-film|magnetically supported sleeve", "IP20", "duty", "speed"),
    RACK(Rotor.AXIAL, "DC regulated", "40x40x28 40x40x56 60x60x38 80x80x38 80x80x56 92x92x38", "12 48", 28, 52, "ball", "IP20", "duty",
            "speed"),
    CABINET(Rotor.AXIAL, "AC", "80x80x25 80x80x38 92x92x25 120x120x25 120x120x38 135x135x38 172x150x38 172x150x51", "115 230", 2, 2,
            "ball|sleeve", "IP20|IP44", "none", "none"),
    STATION(Rotor.AXIAL, "DC regulated", "120x120x38 127x127x38 140x140x38 140x140x51 172x150x51 172x172x51 200x200x70", "24 48", 20, 38,
            "ball", "IP20|IP55|IP68", "duty|control voltage", "speed"),
    OUTDOOR(Rotor.AXIAL, "DC regulated", "40x40x20 60x60x25 80x80x25 80x80x32 92x92x38 120x120x38", "12 24 48", 14, 26, "ball",
            "IP55|IP67|IP68", "duty|none", "speed|locked rotor"),
    WARM(Rotor.AXIAL, "DC regulated", "60x60x25 80x80x25 80x80x32 92x92x25 120x120x25 120x120x38", "12 24", 10, 20, "ball|sleeve", "IP20",
            "thermistor", "none|speed"),
    BIG(Rotor.AXIAL, "EC", "200x200x70 225x225x80 254x254x89 300x300x90 350x350x100 400x400x110", "230 48", 20, 34, "ball", "IP44|IP54|IP55",
            "control voltage|bus", "none|speed"),
    MAINS(Rotor.AXIAL, "AC", "172x172x51 200x200x70 225x225x80 254x254x89 300x300x90", "115 230", 2, 4, "ball", "IP44|IP54", "none", "none"),
    SLANT(Rotor.MIXED, "DC regulated", "60x60x38 80x80x38 120x120x45 140x140x51 172x150x51 200x200x80", "24 48", 20, 42, "ball", "IP20|IP54",
            "duty", "speed"),
    SLANT_EC(Rotor.MIXED, "EC", "150x150x75 172x172x80 200x200x90 225x225x100 250x250x110", "230", 24, 45, "ball", "IP44|IP54",
            "control voltage", "speed"),
    PUFF(Rotor.FORWARD, "DC unregulated", "15x15x4 20x20x5 25x25x7 30x30x10 35x35x7 40x40x10 45x45x20", "5 12", 6, 12, "sleeve|fluid-film|ball",
            "IP20", "none|voltage", "none|speed"),
    SCROLL(Rotor.FORWARD, "DC unregulated", "50x50x15 50x50x20 60x60x15 60x60x25 75x75x15 75x75x30 97x97x33", "12 24", 9, 18, "ball|sleeve",
            "IP20", "voltage", "none|speed|locked rotor"),
    DRUM(Rotor.FORWARD, "DC regulated", "97x97x33 120x120x32 135x135x50 160x160x60 180x180x75", "12 24 48", 11, 24, "ball", "IP20|IP54",
            "duty", "speed"),
    DRUM_AC(Rotor.FORWARD, "AC", "120x120x60 135x135x75 160x160x85 180x180x92 200x200x100", "115 230", 2, 4, "ball|sleeve", "IP20|IP44",
            "none", "none"),
    WHEEL(Rotor.BACKWARD, "DC regulated", "97x97x50 108x108x55 133x133x60 175x175x69 190x190x69 220x220x71", "24 48", 22, 46, "ball",
            "IP20|IP54", "duty|control voltage", "speed"),
    WHEEL_EC(Rotor.BACKWARD, "EC", "190x190x69 220x220x71 250x250x99 280x280x110 310x310x125 355x355x150 400x400x170", "230", 26, 46, "ball",
            "IP54|IP55", "control voltage|bus", "none|speed"),
    WHEEL_AC(Rotor.BACKWARD, "AC", "175x175x69 190x190x69 220x220x71 225x225x89 250x250x99", "115 230", 2, 4, "ball", "IP44", "none", "none"),
    LONG(Rotor.CROSS, "DC unregulated", "90x45x46 120x45x46 180x45x46 180x58x60 240x58x60 300x62x64", "12 24", 3.5, 7, "sleeve|ball", "IP20",
            "voltage", "none"),
    LONG_AC(Rotor.CROSS, "AC", "120x62x66 180x62x66 240x70x74 300x90x94 360x90x94 400x90x94", "115 230", 2, 4, "sleeve|ball", "IP20", "none",
            "none");

    private final Rotor rotor;
    private final String motor;
    private final List<int[]> frames;
    private final List<String> volts;
    private final double slowest;
    private final double fastest;
    private final List<String> bearings;
    private final List<String> ingress;
    private final List<String> controls;
    private final List<String> signals;

    Line(Rotor rotor, String motor, String frames, String volts, double slowest, double fastest, String bearings, String ingress,
            String controls, String signals) {
        this.rotor = rotor;
        this.motor = motor;
        this.frames = Arrays.stream(frames.split(" "))
                .map(frame -> Arrays.stream(frame.split("x")).mapToInt(Integer::parseInt).toArray()).toList();
        this.volts = List.of(volts.split(" "));
        this.slowest = slowest;
        this.fastest = fastest;
        this.bearings = List.of(bearings.split("\\|"));
        this.ingress = List.of(ingress.split("\\|"));
        this.controls = List.of(controls.split("\\|"));
        this.signals = List.of(signals.split("\\|"));
    }

    Rotor rotor() {
        return rotor;
    }

    /** One of the words of a part. */
    String motor() {
        return motor;
    }

    /** Whether it is an induction motor at mains. */
    boolean induction() {
        return motor.equals("AC");
    }

    /** Width, height and depth in millimetres, by size. */
    List<int[]> frames() {
        return frames;
    }

    List<String> volts() {
        return volts;
    }

    /** Tip speed of the slowest grade, m/s; of induction motors the number of poles of the fastest. */
    double slowest() {
        return slowest;
    }

    /** Tip speed of the fastest grade, m/s; of induction motors the number of poles of the slowest. */
    double fastest() {
        return fastest;
    }

    List<String> bearings() {
        return bearings;
    }

    List<String> ingress() {
        return ingress;
    }

    List<String> controls() {
        return controls;
    }

    List<String> signals() {
        return signals;
    }
}
