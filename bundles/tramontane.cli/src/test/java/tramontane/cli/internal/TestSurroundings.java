package tramontane.cli.internal;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tramontane.analysis.Engine;
import tramontane.cli.Verb;

/** What a test says. */
record TestSurroundings(Optional<Engine> engine, List<Verb> verbs, Inventory inventory, Optional<Path> samples,
        List<Throwable> faults) implements Surroundings {

    static TestSurroundings with(Engine engine) {
        return new TestSurroundings(Optional.of(engine), List.of(), Inventory.EMPTY, Optional.empty(), new ArrayList<>());
    }

    static TestSurroundings empty() {
        return new TestSurroundings(Optional.empty(), List.of(), Inventory.EMPTY, Optional.empty(), new ArrayList<>());
    }

    TestSurroundings withSamples(Path folder) {
        return new TestSurroundings(engine, verbs, inventory, Optional.of(folder), faults);
    }

    TestSurroundings withVerbs(Verb... more) {
        return new TestSurroundings(engine, List.of(more), inventory, samples, faults);
    }

    TestSurroundings withInventory(Inventory other) {
        return new TestSurroundings(engine, verbs, other, samples, faults);
    }

    @Override
    public String version() {
        return "1.2.3";
    }

    @Override
    public void detail(Throwable fault) {
        faults.add(fault);
    }

    Program program() {
        return new Program(this, Program.verbs(this));
    }

    int run(MemoryConsole console, String... line) {
        return program().run(List.of(line), console);
    }
}
