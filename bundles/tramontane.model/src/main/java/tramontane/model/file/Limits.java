package tramontane.model.file;

/**
 * How much a file may hold, so that a wrong or hostile one is refused instead of exhausting the program.
 *
 * @param bytes    size of the file, bytes, at most {@value #LARGEST}
 * @param depth    objects and lists within one another, at most {@value #DEEPEST}
 * @param values   numbers, texts, lists and objects altogether
 * @param problems problems that are reported; further ones are counted
 */
public record Limits(long bytes, int depth, int values, int problems) {

    /** Largest size that may be allowed, 1 GiB; a file is read in one piece. */
    public static final long LARGEST = 1L << 30;

    /** Deepest nesting that may be allowed; reading nests as deep as its file. */
    public static final int DEEPEST = 500;

    /** 64 MB, 200 deep, 10 million values, 1000 problems. */
    public static final Limits STANDARD = new Limits(64L << 20, 200, 10_000_000, 1000);

    public Limits {
        if (bytes < 1 || bytes > LARGEST || depth < 1 || depth > DEEPEST || values < 1 || problems < 1) {
            throw new IllegalArgumentException("limits must be at least 1, the size at most " + LARGEST + " bytes and the depth "
                    + "at most " + DEEPEST + ", got " + bytes + " bytes, depth " + depth + ", " + values + " values, " + problems + " problems");
        }
    }

    /** These limits with another size of the file, bytes. */
    public Limits withBytes(long changed) {
        return new Limits(changed, depth, values, problems);
    }
}
