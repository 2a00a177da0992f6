import { expose } from 'comlink';
import { studyService } from './study-service.ts';

expose(studyService);
