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
        "IP67, none, immersion, none", "IP66, fine dust, strong jets, none", "IP69K, none, jets, none", "IP69K, none, immersion, not met", "IPX4, dust, splash, not met", "IP5X, dust, none, none",
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
}
