package tramontane.reliability.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tramontane.analysis.Finding;
import tramontane.model.Design;
import tramontane.model.file.DesignFile;

/** Rules of use. */
class RulesTest {

    private static List<Finding> findings(String equipment, String mover, String moverLife, String bank, String service) {
        String text = "{'format': 1, 'equipment': {'name': 'box'" + equipment + "}, 'airMovers': [{'id': 'fan'" + mover + ", 'curves': [{'speed': '3000 rpm', 'flow':"
                + " '0 100 m³/h', 'pressure': '50 0 Pa'}], 'sections': {'life': {'rated': '60000 h', 'at': '40 °C', 'shape': 2, 'factor': 1.5, 'speedExponent': 1"
                + moverLife + "}}}], 'airPath': {'bays': ['box'], 'passages': [{'id': 'fans', 'kind': 'bank', 'from': 'outside', 'to': 'box', 'mover': 'fan',"
                + " 'sections': {'life': {" + bank + "}}}]}, 'sections': {'life': {" + service + "}}}";
        Design design = DesignFile.parse(text.replace('\'', '"')).design().orElseThrow();
        return RuleFindings.of(Scene.of(design));
    }

    private static Optional<Finding> about(List<Finding> findings, String words) {
        return findings.stream().filter(finding -> finding.message().toString().contains(words)).findFirst();
    }

    @ParameterizedTest
    @CsvSource({"sleeve, upright, height, '', caution", "sleeve, upright, depth, '', none", "sleeve, on its back, depth, '', caution", "sleeve, on its side, width, '', caution",
        "sleeve, on its side, height, '', none", "sleeve, upside down, height, '', caution", "sleeve, any, depth, '', caution", "sleeve, upright, '', '', note", "sleeve, '', depth, '', note",
        "ball, upright, height, '', none", "fluid-film, upright, height, '', caution", "magnetically supported sleeve, upright, height, any, none", "ball, upright, depth, upright, not met",
        "ball, upright, height, level, not met", "ball, any, '', upright, not met"})
    void attitudes(String bearing, String attitude, String along, String allowed, String severity) {
        List<Finding> findings = findings(attitude.isEmpty() ? "" : ", 'attitude': '" + attitude + "'", ", 'bearing': '" + bearing + "'",
                allowed.isEmpty() ? "" : ", 'shaft': '" + allowed + "'", along.isEmpty() ? "" : "'shaft': '" + along + "'", "");
        assertEquals(severity, about(findings, "with the shaft").map(finding -> finding.severity().word()).orElse("none"), findings::toString);
        about(findings, "with the shaft").ifPresent(finding -> assertEquals(allowed.isEmpty() ? "common practice" : "data sheet of the part", finding.source()));
    }

    @ParameterizedTest
    @CsvSource({"IP20, dust, none, not met", "IP54, dust, none, none", "IP54, fine dust, none, not met", "IP54, dust, spray, none", "IP54, none, jets, not met", "IP67, none, jets, not met",
        "IP67, none, immersion, none", "IP66, fine dust, strong jets, none", "IP69K, none, jets, not met", "IP69K, none, splash, none", "IP68, none, strong jets, not met", "IP68, none, drip, none", "IP66, none, immersion, not met",
        "IP68, none, immersion, none", "IP54, none, 'drip, tilted', none", "IP21, none, 'drip, tilted', not met", "IP54S, dust, splash, none", "IP69K, none, immersion, not met", "IPX4, dust, splash, not met", "IP5X, dust, none, none",
        "'', dust, none, not judged", "'', none, none, none", "IP20, fingers, none, none", "IP00, fingers, drip, not met"})
    void ingress(String code, String solids, String water, String severity) {
        List<Finding> findings = findings("", code.isEmpty() ? "" : ", 'ingress': '" + code + "'", "", "", "'solids': '" + solids + "', 'water': '" + water + "'");
        Optional<Finding> finding = findings.stream().filter(each -> each.source().equals("IEC 60529")).findFirst();
        assertEquals(severity, finding.map(each -> each.severity().word()).orElse("none"), findings::toString);
    }

    @Test
    void aBankMayStandDry() {
        assertTrue(findings("", ", 'ingress': 'IP20'", "", "'solids': 'none', 'water': 'none'", "'solids': 'dust', 'water': 'spray'").stream()
                .noneMatch(each -> each.source().equals("IEC 60529")));
    }

    @ParameterizedTest
    @CsvSource({"'', not judged", "5 gn, not met", "10 gn, none", "15 gn, none"})
    void shocks(String withstands, String severity) {
        List<Finding> findings = findings("", "", withstands.isEmpty() ? "" : ", 'shock': '" + withstands + "', 'shockTime': '11 ms'", "",
                "'shock': '10 gn', 'shockTime': '6 ms'");
        assertEquals(severity, about(findings, "shocks").map(finding -> finding.severity().word()).orElse("none"), findings::toString);
    }

    @Test
    void longerShocksAreHarsher() {
        Finding finding = about(findings("", "", ", 'shock': '15 gn', 'shockTime': '6 ms'", "", "'shock': '10 gn', 'shockTime': '11 ms'"), "harsher").orElseThrow();
        assertTrue(finding.message().toString().contains("11 ms") && finding.message().toString().contains("6 ms"), finding.message()::toString);
    }

    @ParameterizedTest
    @CsvSource({"'-40 °C', '80 °C', none", "'-10 °C', '80 °C', not met", "'-40 °C', '60 °C', not met", "'', '', not judged"})
    void storage(String low, String high, String severity) {
        String own = low.isEmpty() ? "" : ", 'lowestStorage': '" + low + "', 'highestStorage': '" + high + "'";
        List<Finding> findings = findings("", "", own, "", "'lowestStorage': '-25 °C', 'highestStorage': '70 °C'");
        Optional<Finding> finding = about(findings, "stored").or(() -> about(findings, "storage"));
        assertEquals(severity, finding.map(each -> each.severity().word()).orElse("none"), findings::toString);
    }

    @Test
    void whatStopsWithoutWarningAndWhatCanHurt() {
        List<Finding> sleeve = findings("", ", 'bearing': 'sleeve'", "", "", "'damage': true, 'hazard': true");
        assertTrue(about(sleeve, "stop without warning").isPresent());
        assertTrue(about(sleeve, "no proof of safety").orElseThrow().remedy().toString().contains("safety standard"));
        List<Finding> ball = findings("", ", 'bearing': 'ball'", "", "", "'damage': true");
        assertTrue(about(ball, "stop without warning").isEmpty() && about(ball, "safety").isEmpty());
    }

    /** What is said, word by word; a bank of two parts of one kind is told once. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', value = {
        "'attitude': 'upright' | 'bearing': 'sleeve' | | 'shaft': 'height' | | the movers of bank fans (fan, sleeve bearings) may work with the shaft level only; it stands upright",
        "'attitude': 'any' | 'bearing': 'fluid-film' | | 'shaft': 'height' | | the movers of bank fans (fan, fluid-film bearings) may work with the shaft level only; it may lie any"
            + " way, as the equipment may stand in any attitude",
        "'attitude': 'upright' | | 'shaft': 'upright' | 'shaft': 'depth' | | the movers of bank fans (fan) may work with the shaft upright only; it lies level",
        " | 'bearing': 'sleeve' | | | | the movers of bank fans (fan, sleeve bearings) may work with the shaft level only; how it lies is not said",
        " | 'ingress': 'IP20' | | | 'solids': 'dust', 'water': 'drip' | the movers of bank fans (fan) are IP20; what reaches them is dust (IP5X) and dripping water (IPX1)",
        " | 'ingress': 'IP67' | | | 'water': 'strong jets' | the movers of bank fans (fan) are IP67; what reaches them is strong jets of water (IPX6)",
        " | | | | 'solids': 'fine dust', 'water': 'immersion' | whether the movers of bank fans (fan) withstand fine dust and immersion in water is not known: their ingress"
            + " protection is not stated",
        " | | 'shock': '5 gn' | | 'shock': '10 gn' | the movers of bank fans (fan) withstand shocks of 49.0 m/s²; they meet 98.1 m/s²",
        " | | | | 'shock': '10 gn' | whether the movers of bank fans (fan) withstand shocks of 98.1 m/s² is not known: their shock class is not stated",
        " | | 'shock': '15 gn' | | 'shock': '10 gn', 'shockTime': '11 ms' | whether the movers of bank fans (fan) withstand shocks that last 11 ms is not known: how long those"
            + " last that they withstand is not stated",
        " | | 'shock': '15 gn', 'shockTime': '6 ms' | | 'shock': '10 gn', 'shockTime': '11 ms' | the movers of bank fans (fan) withstand shocks that last 6 ms; they meet some of"
            + " 11 ms, which are harsher at the same height",
        " | | 'lowestStorage': '-10 °C' | | 'lowestStorage': '-25 °C' | the movers of bank fans (fan) may be stored down to 263 K; they meet 248 K",
        " | | 'highestStorage': '60 °C' | | 'highestStorage': '70 °C' | the movers of bank fans (fan) may be stored up to 333 K; they meet 343 K",
        " | | 'lowestStorage': '-40 °C' | | 'lowestStorage': '-25 °C', 'highestStorage': '70 °C' | whether the movers of bank fans (fan) withstand the temperatures of storage is not"
            + " known: the highest that they may be stored at is not stated",
        " | | | | 'lowestStorage': '-25 °C' | whether the movers of bank fans (fan) withstand the temperatures of storage is not known: those that they may be stored at are not stated",
        " | 'bearing': 'magnetically supported sleeve' | 'shaft': 'any' | | 'damage': true | the movers of bank fans (fan) have magnetically supported sleeve bearings, which may stop"
            + " without warning; that does damage here",
        " | | | | 'hazard': true | loss of cooling can hurt somebody: life and redundancy as they are computed here are no proof of safety"})
    void sentences(String equipment, String mover, String life, String bank, String service, String sentence) {
        List<Finding> findings = findings(more(equipment), more(mover), more(life), bank == null ? "" : bank, service == null ? "" : service);
        List<Finding> told = findings.stream().filter(each -> !each.message().toString().contains("does not follow their speed")).toList();
        assertEquals(List.of(sentence), told.stream().map(each -> each.message().toString()).toList());
        assertTrue(!told.getFirst().remedy().toString().isEmpty(), "what to do about it");
    }

    private static String more(String members) {
        return members == null ? "" : ", " + members;
    }
}
