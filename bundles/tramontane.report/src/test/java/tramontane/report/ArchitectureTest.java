package tramontane.report;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;

import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import org.junit.jupiter.api.Test;

class ArchitectureTest {

    @Test
    void reportsKnowTheApiOnlyAndNoDisplay() {
        classes().should().onlyDependOnClassesThat().resideInAnyPackage("java.lang..", "java.util..", "java.math", "tramontane.report..",
                "tramontane.analysis", "tramontane.model", "tramontane.physics..", "org.osgi..").check(new ClassFileImporter()
                .withImportOption(new ImportOption.DoNotIncludeTests()).importPackages("tramontane.report"));
    }
}
