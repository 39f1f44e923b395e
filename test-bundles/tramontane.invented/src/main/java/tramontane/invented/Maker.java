package tramontane.invented;

/**
 * Makers; none of them exists. Each has its habits in units, its quality and its prices.
 */
enum Maker {
    HALMSTRUP("HV", "Halmstrup & Vey (invented)", "m³/h", "Pa", 0, 1.05, 1.15),
    QUILLMERE("QA", "Quillmere Air (invented)", "cfm", "inH2O", 1, 0.95, 0.8),
    TESSANDRO("TS", "Tessandro (invented)", "m³/h", "Pa", -1, 1.0, 1.0),
    NAKAMIZU("NZ", "Nakamizu Works (invented)", "m³/h", "Pa", -1.5, 1.08, 1.25),
    BRUVIK("BK", "Bruvik Motor (invented)", "l/s", "Pa", 0.5, 1.0, 1.05),
    LERWEN("LW", "Lerwen Blowers (invented)", "cfm", "mmH2O", 1.5, 0.92, 0.7);

    private final String code;
    private final String title;
    private final String flowUnit;
    private final String pressureUnit;
    private final double noise;
    private final double efficiency;
    private final double price;

    Maker(String code, String title, String flowUnit, String pressureUnit, double noise, double efficiency, double price) {
        this.code = code;
        this.title = title;
        this.flowUnit = flowUnit;
        this.pressureUnit = pressureUnit;
        this.noise = noise;
        this.efficiency = efficiency;
        this.price = price;
    }

    String code() {
        return code;
    }

    String title() {
        return title;
    }

    String flowUnit() {
        return flowUnit;
    }

    String pressureUnit() {
        return pressureUnit;
    }

    /** Above the noise of others, dB. */
    double noise() {
        return noise;
    }

    /** Over the efficiency of others. */
    double efficiency() {
        return efficiency;
    }

    /** Over the prices of others. */
    double price() {
        return price;
    }
}
