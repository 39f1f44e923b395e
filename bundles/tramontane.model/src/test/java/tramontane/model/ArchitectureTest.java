package tramontane.model;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import org.junit.jupiter.api.Test;

/** The model knows physics and nobody else. */
class ArchitectureTest {

    private static final JavaClasses MODEL = new ClassFileImporter().withImportOption(new ImportOption.DoNotIncludeTests())
            .importPackages("tramontane.model");

    @Test
    void theModelDependsOnPhysicsOnly() {
        classes().that().resideInAPackage("tramontane.model..").should().onlyDependOnClassesThat().resideInAnyPackage(
                "java..", "tramontane.model..", "tramontane.physics..", "com.google.gson..", "org.osgi.annotation..")
                .check(MODEL);
    }

    @Test
    void onlyFilesKnowJson() {
        noClasses().that().resideOutsideOfPackages("tramontane.model.file..", "tramontane.model.internal..").should()
                .dependOnClassesThat().resideInAPackage("com.google.gson..").check(MODEL);
    }

    @Test
    void theRecordsDoNotKnowTheirFiles() {
        noClasses().that().resideInAPackage("tramontane.model").should().dependOnClassesThat()
                .resideInAPackage("tramontane.model.file..").check(MODEL);
    }
}
