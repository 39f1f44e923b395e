package tramontane.airflow.desktop.internal.path;

/** How wide and high text is; from the system's fonts where there is a display. */
interface Measure {

    /** How a text of the picture is written. */
    enum Face {
        /** What a bay or passage is called. */
        NAME,
        /** Values and what else is said. */
        TEXT
    }

    /** Letters of a common size, for pictures without a display. */
    Measure COMMON = new Measure() {
        @Override
        public double width(String text, Face face) {
            return text.codePointCount(0, text.length()) * (face == Face.NAME ? 7.4 : 6.8);
        }

        @Override
        public double height(Face face) {
            return 16;
        }
    };

    /** Width of a text in one line. */
    double width(String text, Face face);

    /** Height of a line. */
    double height(Face face);

    /** The text, cut with an ellipsis where it is wider than there is room. */
    default String fit(String text, Face face, double room) {
        if (width(text, face) <= room) {
            return text;
        }
        int low = 0;
        int high = text.length();
        while (low < high) {
            int middle = (low + high + 1) / 2;
            if (width(text.substring(0, middle).stripTrailing() + "…", face) <= room) {
                low = middle;
            } else {
                high = middle - 1;
            }
        }
        int end = low > 0 && Character.isHighSurrogate(text.charAt(low - 1)) ? low - 1 : low;
        return text.substring(0, end).stripTrailing() + "…";
    }
}
