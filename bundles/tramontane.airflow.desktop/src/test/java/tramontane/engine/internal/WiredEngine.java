package tramontane.engine.internal;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.lang.reflect.Constructor;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.Type;
import java.net.URI;
import java.net.URL;
import java.nio.file.FileSystem;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import tramontane.analysis.Analysis;
import tramontane.analysis.Engine;
import tramontane.analysis.LinkKind;
import tramontane.analysis.PassageKind;
import tramontane.analysis.SectionType;
import tramontane.analysis.SpeedLaw;

/**
 * The real engine with all components of the bundles on the class path, put together from their component descriptions without a
 * framework, for tests that need the real analyses.
 */
public final class WiredEngine {

    private static final Pattern CLASS = Pattern.compile("<implementation class=\"([^\"]+)\"");
    private static final Pattern RANKING = Pattern.compile("service.ranking\" type=\"Integer\" value=\"(-?\\d+)\"");

    private record Component(String type, int ranking) {
    }

    private final Map<String, Component> components = new LinkedHashMap<>();
    private final Map<String, Object> made = new LinkedHashMap<>();
    private final List<Object> extra;

    private WiredEngine(List<Object> extra) {
        this.extra = extra;
    }

    /**
     * Everything there is, and more.
     *
     * @param engine the engine
     * @param laws   the speed laws with their service properties
     */
    public record Wired(Engine engine, List<Map.Entry<Map<String, Object>, SpeedLaw>> laws) {
    }

    /** Everything there is, and more. */
    public static Wired with(Object... more) {
        WiredEngine wired = new WiredEngine(List.of(more));
        Engine engine = wired.engine();
        return new Wired(engine, wired.of(SpeedLaw.class).stream().map(component -> Map.<Map<String, Object>, SpeedLaw>entry(
                Map.of("service.ranking", component.ranking(), "service.id", 1L), (SpeedLaw) wired.make(component))).toList());
    }

    private Engine engine() {
        try {
            for (URL url : Collections.list(WiredEngine.class.getClassLoader().getResources("OSGI-INF"))) {
                // folders of classes while a build compiles and tests only, jars once it packages
                if (url.getProtocol().equals("file")) {
                    readAll(Path.of(URI.create(url.toString())));
                } else {
                    try (FileSystem jar = FileSystems.newFileSystem(URI.create(url.toString()), Map.of())) {
                        readAll(jar.getPath("OSGI-INF"));
                    }
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        Extensions extensions = new Extensions(extensions(Analysis.class), extensions(PassageKind.class), extensions(LinkKind.class),
                extensions(SectionType.class), List.of(), List.of());
        return new IsolatingEngine(() -> extensions, List::of, ModelChecks.OF_THE_MODEL, Runtime.getRuntime().availableProcessors());
    }

    private void readAll(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            files.filter(file -> file.toString().endsWith(".xml")).sorted().forEach(this::read);
        }
    }

    private void read(Path file) {
        try {
            String xml = Files.readString(file);
            Matcher type = CLASS.matcher(xml);
            Matcher ranking = RANKING.matcher(xml);
            if (type.find() && type.group(1).startsWith("tramontane.") && !type.group(1).startsWith("tramontane.engine.") && !type.group(1).startsWith("tramontane.selection.")) {
                components.put(type.group(1), new Component(type.group(1), ranking.find() ? Integer.parseInt(ranking.group(1)) : 0));
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @SuppressWarnings("unchecked")
    private <S> List<Extension<S>> extensions(Class<?> service) {
        List<Extension<S>> all = new ArrayList<>();
        long id = 1;
        for (Component component : of(service)) {
            all.add(new Extension<>((S) make(component), id++, component.ranking(), "test 0.1.0"));
        }
        for (Object each : extra) {
            if (service.isInstance(each)) {
                all.add(new Extension<>((S) each, 1000 + id++, 0, "test 0.1.0"));
            }
        }
        return all;
    }

    private List<Component> of(Class<?> service) {
        return components.values().stream().filter(component -> service.isAssignableFrom(type(component)))
                .sorted(Comparator.comparing(Component::ranking).reversed()).toList();
    }

    private static Class<?> type(Component component) {
        try {
            return Class.forName(component.type());
        } catch (ClassNotFoundException e) {
            throw new IllegalStateException(e);
        }
    }

    private Object make(Component component) {
        Object known = made.get(component.type());
        if (known == null) {
            try {
                Constructor<?> constructor = type(component).getDeclaredConstructors()[0];
                constructor.setAccessible(true);
                Object[] given = Stream.of(constructor.getGenericParameterTypes()).map(this::given).toArray();
                known = constructor.newInstance(given);
            } catch (ReflectiveOperationException e) {
                throw new IllegalStateException(component.type(), e);
            }
            made.put(component.type(), known);
        }
        return known;
    }

    private Object given(Type type) {
        if (!(type instanceof ParameterizedType list)) {
            return make(of((Class<?>) type).getFirst());
        }
        Type item = list.getActualTypeArguments()[0];
        if (item instanceof ParameterizedType entry && entry.getRawType() == Map.Entry.class) {
            return of((Class<?>) entry.getActualTypeArguments()[1]).stream().map(component -> Map.entry(
                    Map.of("service.ranking", component.ranking(), "service.id", 1L), make(component))).toList();
        }
        Type raw = item instanceof ParameterizedType parameterized ? parameterized.getRawType() : item;
        return of((Class<?>) raw).stream().map(this::make).toList();
    }
}
