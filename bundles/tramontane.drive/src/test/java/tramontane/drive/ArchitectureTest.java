package tramontane.drive;

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
    void driveKnowsOfOtherAnalysesOnlyWhatTheyExport() {
        classes().that().resideInAPackage("tramontane.drive..").should().onlyDependOnClassesThat()
                .resideInAnyPackage("java..", "tramontane.drive..", "tramontane.thermal", "tramontane.airflow", "tramontane.analysis",
                        "tramontane.model", "tramontane.physics..", "org.osgi..").check(CLASSES);
    }

    /** Without temperatures the rest works: what needs them is named here. */
    @Test
    void onlyLoopsAndLawsKnowTemperatures() {
        noClasses().that().resideInAPackage("tramontane.drive..")
                .and().haveNameNotMatching(".*\\.(Loop|Law|LeastSettings|Wishes)[A-Za-z]*(\\$.*)?")
                .should().dependOnClassesThat().resideInAPackage("tramontane.thermal..").check(CLASSES);
    }

    @Test
    void nobodyElseUsesIt() {
        noClasses().that().resideOutsideOfPackage("tramontane.drive..").should().dependOnClassesThat().resideInAPackage("tramontane.drive..")
                .check(CLASSES);
    }
}
