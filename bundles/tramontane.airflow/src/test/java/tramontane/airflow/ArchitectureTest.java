package tramontane.airflow;

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
    void airflowKnowsTheApiTheModelAndPhysicsOnly() {
        classes().that().resideInAPackage("tramontane.airflow..").should().onlyDependOnClassesThat()
                .resideInAnyPackage("java..", "tramontane.airflow..", "tramontane.analysis", "tramontane.model",
                        "tramontane.physics..", "org.osgi..").check(CLASSES);
    }

    @Test
    void nobodyElseUsesItsInternals() {
        noClasses().that().resideOutsideOfPackage("tramontane.airflow..").should().dependOnClassesThat()
                .resideInAPackage("tramontane.airflow.internal..").check(CLASSES);
    }

    @Test
    void whatItDependsOnDoesNotKnowIt() {
        noClasses().that().resideInAnyPackage("tramontane.analysis..", "tramontane.model..", "tramontane.physics..").should()
                .dependOnClassesThat().resideInAPackage("tramontane.airflow..").check(CLASSES);
    }
}
