package tramontane.cli.internal;
import java.nio.charset.StandardCharsets;
import tramontane.cli.internal.output.*;
import tramontane.physics.units.UnitSystem;
class Try {
    public static void main(String[] a) {
        System.out.println(TextReport.of(Toys.results(Toys.cabinet()), UnitSystem.METRIC, 100, Spelling.FULL::of));
        System.out.println(TextReport.of(Toys.results(Toys.cabinet()), UnitSystem.US, 80, new Spelling(StandardCharsets.US_ASCII)::of));
        System.out.println(TextReport.of(Toys.results(Toys.many(30)), UnitSystem.METRIC, 100, Spelling.FULL::of));
        System.out.println(JsonReport.of(Toys.results(Toys.cabinet()), java.util.List.of()));
        System.out.println(CsvFigures.of(Toys.cabinet().figures(), UnitSystem.METRIC));
        for (var v : Program.verbs(null, null, null)) System.out.println(v.summary() + "\n\n" + v.help()+"\n");
        new Program(new Surroundings(){
            public String version(){return "0";} public java.util.Optional<tramontane.analysis.Engine> engine(){return null;}
            public java.util.List<tramontane.cli.Verb> verbs(){return java.util.List.of();} public Inventory inventory(){return null;}
            public java.util.Optional<java.nio.file.Path> samples(){return null;} public void detail(Throwable t){t.printStackTrace();}
        }, Program.verbs(null,null,null)).run(java.util.List.of("--help"), new SystemConsole(System.out, System.err, "", () -> false));
    }
}
