package tramontane.thermal;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import org.junit.jupiter.api.Test;

class ArchitectureTest {

    private static final JavaClasses CLASSES = new ClassFileImporter().withImportOption(new ImportOption.DoNotIncludeTests())
            .importPackages("tramontane");

    @Test
    void thermalKnowsOfOtherAnalysesOnlyWhatTheyExport() {
        classes().that().resideInAPackage("tramontane.thermal..").should().onlyDependOnClassesThat()
                .resideInAnyPackage("java..", "tramontane.thermal..", "tramontane.airflow", "tramontane.analysis", "tramontane.model",
                        "tramontane.physics..", "org.hipparchus..", "org.osgi..").check(CLASSES);
    }

    @Test
    void nobodyElseUsesIt() {
        noClasses().that().resideOutsideOfPackage("tramontane.thermal..").should().dependOnClassesThat()
                .resideInAPackage("tramontane.thermal..").check(CLASSES);
    }
}
