package tramontane.reliability;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import org.junit.jupiter.api.Test;

/** Who may know whom. */
class ArchitectureTest {

    private static final JavaClasses CLASSES = new ClassFileImporter().withImportOption(new ImportOption.DoNotIncludeTests())
            .importPackages("tramontane.reliability");

    @Test
    void knowsTheApiModelAndPhysicsAndTellsSelectionAlone() {
        classes().should().onlyDependOnClassesThat().resideInAnyPackage("tramontane.reliability..", "tramontane.analysis", "tramontane.model..",
                "tramontane.physics..", "tramontane.selection", "org.hipparchus..", "org.apache.commons.csv", "org.osgi..", "java..").check(CLASSES);
    }

    @Test
    void whatIsExportedIsPure() {
        noClasses().that().resideInAnyPackage("tramontane.reliability.statistics", "tramontane.reliability.system", "tramontane.reliability.bearing")
                .should().dependOnClassesThat().resideInAnyPackage("tramontane.analysis", "tramontane.selection", "tramontane.reliability.internal",
                        "tramontane.reliability.charts", "org.osgi.service..").check(CLASSES);
        noClasses().that().resideOutsideOfPackage("tramontane.reliability.internal").should().dependOnClassesThat()
                .resideInAPackage("tramontane.reliability.internal").check(CLASSES);
    }
}
