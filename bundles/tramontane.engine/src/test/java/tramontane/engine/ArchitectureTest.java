package tramontane.engine;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import org.junit.jupiter.api.Test;

/** The arrows between bundles. */
class ArchitectureTest {

    private static final JavaClasses ENGINE = new ClassFileImporter()
            .withImportOption(new ImportOption.DoNotIncludeTests()).importPackages("tramontane.engine");

    @Test
    void theEngineKnowsTheAnalysisApiTheModelAndPhysicsOnly() {
        classes().should().onlyDependOnClassesThat().resideInAnyPackage("tramontane.engine..", "tramontane.analysis",
                "tramontane.model", "tramontane.physics..", "org.osgi..", "java..").check(ENGINE);
    }

    @Test
    void onlyTheComponentAndTheRegistryKnowTheFramework() {
        noClasses().that().haveSimpleNameNotStartingWith("Registry")
                .and().haveSimpleNameNotEndingWith("Component").and().haveSimpleNameNotStartingWith("Entry")
                .should().dependOnClassesThat().resideInAPackage("org.osgi..").check(ENGINE);
    }
}
