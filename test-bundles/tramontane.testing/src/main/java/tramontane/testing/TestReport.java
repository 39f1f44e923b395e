package tramontane.testing;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.io.Writer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;
import javax.xml.stream.XMLOutputFactory;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamWriter;
import org.junit.platform.engine.TestExecutionResult;
import org.junit.platform.engine.TestSource;
import org.junit.platform.engine.support.descriptor.ClassSource;
import org.junit.platform.engine.support.descriptor.MethodSource;
import org.junit.platform.launcher.TestExecutionListener;
import org.junit.platform.launcher.TestIdentifier;
import org.junit.platform.launcher.TestPlan;

/** Collects what ran, and writes it in the XML form of Maven's Surefire plug-in, which every tool reads. */
final class TestReport implements TestExecutionListener {
    private enum Outcome { PASSED, SKIPPED, FAILED }

    private record Case(String name, Duration time, Outcome outcome, Optional<Throwable> thrown, String reason) { }

    private final Map<String, List<Case>> suites = new TreeMap<>();
    private final Map<String, Instant> started = new ConcurrentHashMap<>();
    private TestPlan plan;

    @Override
    public void testPlanExecutionStarted(TestPlan begun) {
        plan = begun;
    }

    @Override
    public void executionStarted(TestIdentifier test) {
        started.put(test.getUniqueId(), Instant.now());
    }

    @Override
    public void executionSkipped(TestIdentifier test, String reason) {
        // A container that is skipped takes its tests with it; they count one by one.
        if (test.isContainer()) {
            plan.getDescendants(test).stream().filter(TestIdentifier::isTest)
                    .forEach(child -> add(child, Outcome.SKIPPED, Optional.empty(), reason));
        }
        if (test.isTest()) {
            add(test, Outcome.SKIPPED, Optional.empty(), reason);
        }
    }

    @Override
    public void executionFinished(TestIdentifier test, TestExecutionResult result) {
        switch (result.getStatus()) {
            case SUCCESSFUL -> {
                if (test.isTest()) {
                    add(test, Outcome.PASSED, Optional.empty(), "");
                }
            }
            // A container fails when something round its tests does, such as @BeforeAll.
            case FAILED -> add(test, Outcome.FAILED, result.getThrowable(), "");
            case ABORTED -> add(test, Outcome.SKIPPED, result.getThrowable(), result.getThrowable()
                    .map(Throwable::getMessage).orElse(""));
        }
    }

    private synchronized void add(TestIdentifier test, Outcome outcome, Optional<Throwable> thrown, String reason) {
        Duration time = Duration.between(started.getOrDefault(test.getUniqueId(), Instant.now()), Instant.now());
        suites.computeIfAbsent(suite(test), name -> new ArrayList<>())
                .add(new Case(name(test), time, outcome, thrown, reason == null ? "" : reason));
    }

    private String suite(TestIdentifier test) {
        Optional<TestIdentifier> at = Optional.of(test);
        while (at.isPresent()) {
            TestSource source = at.get().getSource().orElse(null);
            if (source instanceof MethodSource method) {
                return method.getClassName();
            }
            if (source instanceof ClassSource type) {
                return type.getClassName();
            }
            at = plan.getParent(at.get());
        }
        return test.getDisplayName();
    }

    private String name(TestIdentifier test) {
        String own = test.getSource().filter(MethodSource.class::isInstance)
                .map(source -> ((MethodSource) source).getMethodName()).orElse(test.getDisplayName());
        // Each run of a parametrised or repeated test has a display name of its own.
        return test.getDisplayName().startsWith(own) ? own : own + " " + test.getDisplayName();
    }

    boolean ran(String type) {
        return suites.entrySet().stream()
                .filter(suite -> suite.getKey().equals(type) || suite.getKey().startsWith(type + "$"))
                .flatMap(suite -> suite.getValue().stream()).anyMatch(test -> test.outcome() != Outcome.SKIPPED);
    }

    long failures() {
        return count(suites.values().stream().flatMap(List::stream).toList(), Outcome.FAILED);
    }

    String summary() {
        List<Case> all = suites.values().stream().flatMap(List::stream).toList();
        return count(all, Outcome.PASSED) + " passed, " + count(all, Outcome.FAILED) + " failed, "
                + count(all, Outcome.SKIPPED) + " skipped";
    }

    /** Each failed test with its message, a line each. */
    List<String> failed() {
        return suites.entrySet().stream().flatMap(suite -> suite.getValue().stream()
                .filter(test -> test.outcome() == Outcome.FAILED)
                .map(test -> suite.getKey() + "." + test.name() + ": " + test.thrown().orElse(null))).toList();
    }

    private static long count(List<Case> tests, Outcome outcome) {
        return tests.stream().filter(test -> test.outcome() == outcome).count();
    }

    void write(Path folder) throws IOException {
        for (Map.Entry<String, List<Case>> suite : suites.entrySet()) {
            try (Writer file = Files.newBufferedWriter(folder.resolve("TEST-" + suite.getKey() + ".xml"))) {
                XMLStreamWriter xml = XMLOutputFactory.newDefaultFactory().createXMLStreamWriter(file);
                write(xml, suite.getKey(), suite.getValue());
                xml.close();
            } catch (XMLStreamException failed) {
                throw new IOException(failed);
            }
        }
    }

    private static void write(XMLStreamWriter xml, String suite, List<Case> tests) throws XMLStreamException {
        xml.writeStartDocument();
        xml.writeCharacters("\n");
        xml.writeStartElement("testsuite");
        xml.writeAttribute("name", suite);
        xml.writeAttribute("tests", Integer.toString(tests.size()));
        xml.writeAttribute("failures", Long.toString(count(tests, Outcome.FAILED)));
        xml.writeAttribute("errors", "0");
        xml.writeAttribute("skipped", Long.toString(count(tests, Outcome.SKIPPED)));
        xml.writeAttribute("time", seconds(tests.stream().map(Case::time).reduce(Duration.ZERO, Duration::plus)));
        for (Case test : tests) {
            xml.writeCharacters("\n  ");
            xml.writeStartElement("testcase");
            xml.writeAttribute("classname", suite);
            xml.writeAttribute("name", test.name());
            xml.writeAttribute("time", seconds(test.time()));
            if (test.outcome() == Outcome.SKIPPED) {
                xml.writeEmptyElement("skipped");
                xml.writeAttribute("message", test.reason());
            } else if (test.outcome() == Outcome.FAILED) {
                xml.writeStartElement("failure");
                xml.writeAttribute("message", clean(test.thrown().map(Throwable::getMessage).orElse("")));
                xml.writeAttribute("type", test.thrown().map(thrown -> thrown.getClass().getName()).orElse(""));
                xml.writeCharacters(clean(test.thrown().map(TestReport::trace).orElse("")));
                xml.writeEndElement();
            }
            xml.writeEndElement();
        }
        xml.writeCharacters("\n");
        xml.writeEndElement();
        xml.writeEndDocument();
    }

    private static String seconds(Duration time) {
        return String.format(Locale.ROOT, "%.3f", time.toNanos() / 1e9);
    }

    private static String trace(Throwable thrown) {
        StringWriter text = new StringWriter();
        thrown.printStackTrace(new PrintWriter(text));
        return text.toString();
    }

    /** XML 1.0 has no control characters. */
    private static String clean(String text) {
        return text.replaceAll("[\\p{Cntrl}&&[^\\n\\t]]", "?");
    }
}
