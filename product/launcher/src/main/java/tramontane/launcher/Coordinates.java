package tramontane.launcher;

import java.nio.file.Path;

/**
 * Where a jar stands in a Maven repository.
 *
 * @param group group, with dots
 * @param artifact artifact
 * @param version version
 * @param type file name extension, {@code jar} unless given
 * @param classifier classifier, empty for none
 */
record Coordinates(String group, String artifact, String version, String type, String classifier) {

    /**
     * Reads the three forms of an id that the OSGi Feature Service specification allows: {@code group:artifact:version},
     * {@code group:artifact:type:version} and {@code group:artifact:type:classifier:version}.
     *
     * @throws IllegalArgumentException if the text is none of them
     */
    static Coordinates parse(String text) {
        String[] parts = text.split(":", -1);
        for (String part : parts) {
            // A slash or a leading dot could lead out of the repository folder.
            if (part.isBlank() || part.contains("/") || part.contains("\\") || part.startsWith(".")) {
                throw new IllegalArgumentException(complaint(text));
            }
        }
        return switch (parts.length) {
            case 3 -> new Coordinates(parts[0], parts[1], parts[2], "jar", "");
            case 4 -> new Coordinates(parts[0], parts[1], parts[3], parts[2], "");
            case 5 -> new Coordinates(parts[0], parts[1], parts[4], parts[2], parts[3]);
            default -> throw new IllegalArgumentException(complaint(text));
        };
    }

    private static String complaint(String text) {
        return "\"" + text + "\" is not of the form group:artifact:version";
    }

    /** The file in a repository folder of Maven's layout. */
    Path in(Path repository) {
        String tail = classifier.isEmpty() ? "" : "-" + classifier;
        return repository.resolve(group.replace('.', '/')).resolve(artifact).resolve(version)
                .resolve(artifact + "-" + version + tail + "." + type);
    }

    @Override
    public String toString() {
        if (!classifier.isEmpty()) {
            return String.join(":", group, artifact, type, classifier, version);
        }
        return type.equals("jar") ? String.join(":", group, artifact, version)
                : String.join(":", group, artifact, type, version);
    }
}
