package tramontane.reliability.cli.internal;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;

import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import org.junit.jupiter.api.Test;

class ArchitectureTest {

    @Test
    void theVerbsKnowTheApiOnly() {
        classes().should().onlyDependOnClassesThat().resideInAnyPackage("java..", "tramontane.reliability.cli..", "tramontane.reliability",
                "tramontane.reliability.statistics", "tramontane.reliability.system", "tramontane.reliability.bearing",
                "tramontane.reliability.charts", "tramontane.report", "tramontane.cli", "tramontane.cli.terminal", "tramontane.analysis",
                "tramontane.model", "tramontane.physics..", "com.google.gson..", "org.osgi..").check(new ClassFileImporter()
                .withImportOption(new ImportOption.DoNotIncludeTests()).importPackages("tramontane.reliability.cli"));
    }
}
