package tramontane.catalogue.internal;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import org.junit.jupiter.api.Test;
import tramontane.catalogue.Catalogue;

/** The catalogue knows physics, model and the API of analyses; no analysis. */
class ArchitectureTest {

    private static final JavaClasses CATALOGUE = new ClassFileImporter().withImportOption(new ImportOption.DoNotIncludeTests())
            .importPackagesOf(Catalogue.class, Store.class);

    @Test
    void theCatalogueKnowsNoAnalysis() {
        noClasses().that().resideInAPackage("tramontane.catalogue..").should().dependOnClassesThat().resideInAnyPackage(
                "tramontane.airflow..", "tramontane.thermal..", "tramontane.drive..", "tramontane.acoustics..", "tramontane.engine..",
                "tramontane.cli..", "tramontane.selection..").check(CATALOGUE);
    }

    @Test
    void theStoreDoesNotKnowTheApiAboveIt() {
        classes().that().belongToAnyOf(Store.class, QuickReader.class, ThoroughReader.class, FileIndex.class, Node.class, FieldTree.class,
                Columns.class, PartTrees.class, CurveFigures.class, FilterReader.class, PartQuestion.class).should()
                .onlyDependOnClassesThat().resideInAnyPackage("java..", "tramontane.catalogue.internal", "tramontane.analysis",
                        "tramontane.model..", "tramontane.physics..").check(CATALOGUE);
    }
}
