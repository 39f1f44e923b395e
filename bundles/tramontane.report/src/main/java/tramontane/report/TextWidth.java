package tramontane.report;

/** How wide words are. */
@FunctionalInterface
public interface TextWidth {

    /**
     * The width of a text.
     *
     * @param text the text, one line
     * @param size height of the font
     * @param bold whether it is bold
     * @return in the unit of the size
     */
    double of(String text, double size, boolean bold);

    /**
     * What a plain sans-serif font takes at most, for where no font is at hand: a picture that is drawn elsewhere later. Rather too
     * much than too little, so that nothing overlaps.
     */
    TextWidth ESTIMATE = (text, size, bold) -> {
        double width = 0;
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            width += " .,:;'|!ijl/()[]".indexOf(c) >= 0 ? 0.38 : "mwMW%@".indexOf(c) >= 0 ? 0.95
                    : c >= 0x1100 ? 1 : Character.isUpperCase(c) ? 0.72 : 0.62;
        }
        return width * size * (bold ? 1.1 : 1);
    };
}
