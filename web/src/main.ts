import './style/tokens.css';
import './style/base.css';
import { mount } from 'svelte';
import Page from './screens/Page.svelte';

const target = document.getElementById('page');
if (target) mount(Page, { target });
